import { outputOf } from './run.js';

/** From this libavcodec on, ffmpeg (5.1) says -fps_mode for what was -vsync. */
const fpsModeSince = [59, 37] as const;

const known = new Map<string, Promise<readonly string[]>>();

async function ask(ffmpeg: string): Promise<readonly string[]> {
  const { output } = await outputOf(ffmpeg, ['-hide_banner', '-version']);
  const [, major, minor] = /libavcodec\s+(\d+)\.\s*(\d+)/.exec(output) ?? [];
  const newer =
    Number(major) > fpsModeSince[0] ||
    (Number(major) === fpsModeSince[0] && Number(minor) >= fpsModeSince[1]);
  return newer ? ['-fps_mode', 'passthrough'] : ['-vsync', 'passthrough'];
}

/** The options by which this ffmpeg gives every frame once, none twice and none left out. */
export function everyFrameOnce(ffmpeg: string): Promise<readonly string[]> {
  const options = known.get(ffmpeg) ?? ask(ffmpeg);
  known.set(ffmpeg, options);
  return options;
}
