import { z } from 'zod';

/** `25/1`, `30000/1001`, `4:3`; undefined for `0/0`, `0:1` and whatever else says nothing. */
const ratio = z
  .string()
  .transform((text) => {
    const [over, under] = text.split(/[/:]/).map(Number);
    return over > 0 && under > 0 ? ([over, under] as const) : undefined;
  })
  .optional();

/** A number written as text, as ffprobe gives times and counts; undefined where it is not known. */
const number = z
  .union([z.string(), z.number()])
  .transform((text) => (Number.isFinite(Number(text)) ? Number(text) : undefined))
  .optional();

const tags = z.record(z.string(), z.string()).optional();

const stream = z.object({
  index: z.number().int(),
  codec_type: z.string().optional(),
  codec_name: z.string().optional(),
  width: z.number().int().optional(),
  height: z.number().int().optional(),
  pix_fmt: z.string().optional(),
  sample_aspect_ratio: ratio,
  r_frame_rate: ratio,
  avg_frame_rate: ratio,
  color_range: z.string().optional(),
  color_space: z.string().optional(),
  color_transfer: z.string().optional(),
  color_primaries: z.string().optional(),
  chroma_location: z.string().optional(),
  field_order: z.string().optional(),
  start_time: number,
  duration: number,
  nb_frames: number,
  disposition: z.object({ attached_pic: z.number().optional() }).optional(),
  tags,
  side_data_list: z.array(z.object({ rotation: number })).optional(),
});

/** What ffprobe says of a file, as far as it is used here. */
export const probedFacts = z.object({
  streams: z.array(stream),
  format: z.object({
    format_name: z.string().optional(),
    start_time: number,
    duration: number,
    tags,
  }),
});

export type StreamFacts = z.output<typeof stream>;
export type FileFacts = z.output<typeof probedFacts>;

/** A tag by its name, however it is cased. */
export function tagOf(
  facts: { readonly tags?: Readonly<Record<string, string>> | undefined },
  name: string,
): string | undefined {
  return Object.entries(facts.tags ?? {}).find(([key]) => key.toLowerCase() === name)?.[1];
}
