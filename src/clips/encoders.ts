import { nearestName } from '../errors/nearest-name.js';
import { InputError } from '../errors/input-error.js';
import { outputOf } from './run.js';
import type { Tools } from './tools.js';

/** The encoders of video that this ffmpeg has, and the codec of each: what most people call it by. */
async function videoEncoders({ ffmpeg }: Tools): Promise<{ name: string; codec: string }[]> {
  const { output } = await outputOf(ffmpeg, ['-hide_banner', '-encoders']);
  const lines = output.matchAll(/^ V[A-Z.]{5} ([^\s=]\S*)(?:.*\(codec (\S+)\))?/gm);
  return [...lines].map(([, name, codec = name]) => ({ name, codec }));
}

/** @throws InputError unless this ffmpeg has the encoder */
export async function requireEncoder(tools: Tools, name: string): Promise<void> {
  const encoders = await videoEncoders(tools);
  const names = encoders.map((encoder) => encoder.name);
  if (names.includes(name)) return;
  const near = encoders.find(({ codec }) => codec === name)?.name ?? nearestName(name, names);
  throw new InputError({
    field: '--encoder',
    what: `this ffmpeg has no encoder "${name}"`,
    hint: `${near === undefined ? '' : `Did you mean ${near}? `}ffmpeg -encoders lists those it has.`,
  });
}

/** Pixel formats of red, green and blue. */
const rgbFormat = /^(gbr|rgb|bgr|0rgb|0bgr|argb|abgr|x2rgb|x2bgr)/;

/**
 * Whether an encoder takes red, green and blue as they are.
 * @param options its own, which may name a pixel format
 */
export async function takesRgb(
  { ffmpeg }: Tools,
  encoder: string,
  options: readonly string[],
): Promise<boolean> {
  const asked = options.lastIndexOf('-pix_fmt');
  if (asked >= 0) return rgbFormat.test(options[asked + 1]);
  const { output } = await outputOf(ffmpeg, ['-hide_banner', '-h', `encoder=${encoder}`]);
  const formats = /Supported pixel formats:(.*)/.exec(output)?.[1];
  // Left unsaid: any.
  return (
    formats === undefined ||
    formats
      .trim()
      .split(/\s+/)
      .some((format) => rgbFormat.test(format))
  );
}

/** Options that would send the result elsewhere, or change what is not the encoder's. */
const notTheEncoders =
  /^-(i|y|n|f|map|vf|filter.*|lavfi|r|s|ss|t|to|frames.*|vn|an|c|codec.*|c:.*|vcodec|acodec|report|progress|vstats.*|passlogfile|pass|attach|dump.*|sdp_file|color.*)$/;

/** Options that take no value: what is written after them would be another file to write. */
const withoutValue =
  /^-(no)?(shortest|bitexact|[dsva]n|hide_banner|stdin|stats.*|copy.*|start_at_zero|benchmark.*|hex|re|accurate_seek|ignore_unknown|recast_media|find_stream_info|xerror|auto.*|apply_cropping|fix_sub_duration|psnr|deinterlace|qphist|intra|sameq|isync|debug_ts|print_graphs.*|h|help|L|license|version|buildconf|formats|(de)?muxers|devices|codecs|decoders|encoders|bsfs|protocols|filters|pix_fmts|layouts|sample_fmts|dispositions|colors|sources|sinks|hwaccels)$/;

/**
 * Options of an encoder as one text: `-crf 16 -preset slow`. Quotes keep blanks together; no shell sees it.
 * @throws InputError unless it is pairs of a name with a dash and a value
 */
export function encoderOptions(text: string): string[] {
  const words = [...text.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(([, a, b, c]) => a ?? b ?? c);
  words.forEach((word, i) => {
    if (i % 2 === 0 && (!/^-[a-z]/i.test(word) || i + 1 === words.length))
      throw new InputError({
        field: '--encoder-options',
        what: `"${word}" is no name with a dash and a value after it`,
        allowed: 'pairs such as "-crf 16 -preset slow"',
      });
    if (i % 2 === 0 && (notTheEncoders.test(word) || withoutValue.test(word)))
      throw new InputError({
        field: '--encoder-options',
        what: `${word} is no option of an encoder`,
        hint: 'What is read and where it is written is said by other options of this command.',
      });
  });
  return words;
}
