import { z } from 'zod';
import { cameraSchema } from './sections/camera.js';
import { deliverySchema } from './sections/delivery.js';
import { printSchema } from './sections/print.js';
import { projectorSchema } from './sections/projector.js';
import { rolloffSchema } from './sections/rolloff.js';
import { roomSchema } from './sections/room.js';
import { stockSchema } from './sections/stock.js';

/** The look file: a name, a note, and the way light went, section by section. */
export const lookSchema = z.strictObject({
  $schema: z.string().optional().meta({ description: 'where editors find the schema' }),
  name: z.string().min(1).max(200).meta({ description: 'what the look is called' }),
  note: z.string().max(4000).default('').meta({ description: 'what it is for, in plain words' }),
  camera: cameraSchema.prefault({}).meta({ description: 'how the camera wrote the film down' }),
  stock: stockSchema.optional().meta({ description: 'what time did to the dyes' }),
  print: printSchema.optional().meta({ description: 'what a lab’s grader would do' }),
  projector: projectorSchema.optional().meta({ description: 'what the machine did' }),
  room: roomSchema.optional().meta({ description: 'what the eye did' }),
  rolloff: rolloffSchema.optional().meta({ description: 'how highlights and shadows end' }),
  delivery: deliverySchema.prefault({}).meta({ description: 'what the device expects' }),
});

/** A look with all defaults filled in. */
export type Look = z.output<typeof lookSchema>;

/** The look file's schema for editors: JSON Schema 2020-12. */
export function lookJsonSchema(): object {
  return { title: 'Gatelight look file', ...z.toJSONSchema(lookSchema, { io: 'input' }) };
}
