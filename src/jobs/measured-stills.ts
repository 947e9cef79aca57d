import { primaries } from '../colour/primaries/index.js';
import { rgbToRgb } from '../colour/primaries/rgb-matrix.js';
import { toFull } from '../colour/signal-range.js';
import { type TransferFunctionName, transferFunctions } from '../colour/transfer-functions/index.js';
import type { Camera } from '../look/sections/camera.js';
import { primariesOf, transferFunctionOf } from '../look/sections/signal.js';
import { transformRun3 } from '../maths/matrix3.js';
import { expandGrey, lastCode, makePicture, type Picture } from '../picture/picture.js';

/** Stills in a form that measuring reads: full range, BT.709 primaries, a named encoding. */
export interface MeasuredStills {
  readonly pictures: readonly Picture[];
  readonly encoding: TransferFunctionName;
  /** What a level of the camera's linear light is divided by to be one of these stills'. */
  readonly scale: number;
}

function isReadable({ encoding, primaries, range }: Camera): boolean {
  return typeof encoding === 'string' && primaries === 'bt709' && range === 'full';
}

/** One row after the other through the camera's decoding, to 16-bit sRGB of light over `scale`; burnt out stays burnt out. */
function converted(still: Picture, camera: Camera, scale: number): Picture {
  const source = expandGrey(still);
  const { decode } = transferFunctionOf(camera.encoding);
  const toScreenPrimaries = rgbToRgb(primariesOf(camera.primaries), primaries.bt709);
  const last = lastCode(source.bits);
  const signalOf = (code: number) => toFull(code / last, camera.range);
  const light = Float64Array.from({ length: last + 1 }, (_, code) => decode(signalOf(code)) / scale);
  const out = makePicture(source.width, source.height, { channels: 3, bits: 16 });
  const rgb = new Float64Array(3);
  for (let from = 0, to = 0; to < out.data.length; from += source.channels, to += 3) {
    let burntOut = false;
    for (let c = 0; c < 3; c++) {
      const code = source.data[from + c];
      rgb[c] = light[code];
      burntOut ||= signalOf(code) >= 1;
    }
    transformRun3(toScreenPrimaries, rgb, 1);
    for (let c = 0; c < 3; c++)
      out.data[to + c] = burntOut
        ? 65535
        : Math.round(65535 * Math.min(1, Math.max(0, transferFunctions.srgb.encode(rgb[c]))));
  }
  return out;
}

/** Stills of a camera, converted only where measuring could not read them as they are. */
export function measuredStills(stills: readonly Picture[], camera: Camera): MeasuredStills {
  if (isReadable(camera))
    return { pictures: stills, encoding: camera.encoding as TransferFunctionName, scale: 1 };
  const scale = transferFunctionOf(camera.encoding).decode(1);
  return { pictures: stills.map((still) => converted(still, camera, scale)), encoding: 'srgb', scale };
}
