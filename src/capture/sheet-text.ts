import type { Cadence } from './cadence.js';
import { exposureText, rateText } from './rate.js';
import { clock } from './running-time.js';
import type { CaptureSheet, FlickerFreeExposure, SpeedPlan } from './sheet.js';

const width = 78;

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
const signed = (share: number) => `${share < 0 ? '-' : '+'}${percent(Math.abs(share))}`;
const row = (name: string, value: string) => `  ${name.padEnd(22)}${value}`;

/** Words laid into lines of at most `width` characters, the second and later ones indented. */
function wrapped(text: string, first: string, later: string): string[] {
  const lines = [first];
  for (const word of text.split(' ')) {
    const last = lines[lines.length - 1];
    const joined = last.trim() === '' || last === first ? last + word : `${last} ${word}`;
    if (joined.length <= width) lines[lines.length - 1] = joined;
    else lines.push(later + word);
  }
  return lines;
}

function exposureRow({ exposureS, angle, nearest }: FlickerFreeExposure): string {
  const left =
    nearest.modulation < 5e-4 ? 'none' : `${percent(nearest.modulation)} (${nearest.stops.toFixed(2)} stops)`;
  const columns = [exposureText(exposureS).padEnd(12), `${angle.toFixed(1)} deg`.padEnd(12)];
  return `  ${columns.join('')}nearest offered ${exposureText(nearest.exposureS).padEnd(9)} flicker left: ${left}`;
}

const counted = (count: number, name: string) => `${count} ${name}${count === 1 ? '' : 's'}`;

function movementRows({ pattern, duplicated, blended, lost }: Cadence): string[] {
  const repeats =
    pattern === undefined
      ? 'no short pattern'
      : `${counted(pattern.filmFrames, 'film frame')} in ${counted(pattern.videoFrames, 'video frame')}`;
  // What repeats does not come by all phases in turn.
  const keepsPhase = pattern !== undefined && ((blended > 0 && blended < 1) || lost > 0);
  const lostRows = lost > 0 ? [row('film frames lost', percent(lost))] : [];
  return [
    row('pattern', repeats),
    row('duplicated, blended', `${percent(duplicated)}, ${percent(blended)}`),
    ...lostRows,
    ...(keepsPhase ? [row('', 'means of all phases; a run that repeats keeps the one it starts with')] : []),
  ];
}

function planRows(plan: SpeedPlan, cameraFps: number): string[] {
  return [
    row('flicker', `${rateText(plan.flickerHz)} Hz`),
    row('against the camera', plan.beatHz === 0 ? 'stands still' : `beats at ${rateText(plan.beatHz)} Hz`),
    ...plan.exposures.map(exposureRow),
    ...(plan.exposures.length === 0
      ? [row('flicker-free exposure', `none at ${rateText(cameraFps)} fps`)]
      : []),
    ...movementRows(plan.cadence),
    row('running time', clock(plan.seconds)),
    row('natural speed', `shown at ${percent(plan.speed.factor)}, play at ${percent(plan.speed.correction)}`),
  ];
}

/** A smaller change of speed is one of rounding. */
const leastTrim = 1e-6;

function trimmedRows({ trimmed, cameraFps }: CaptureSheet): string[] {
  if (trimmed === undefined)
    return ['Projector trimmed: no speed within its reach stands still against the camera'];
  if (Math.abs(trimmed.change) < leastTrim)
    return ['Projector trimmed: no need, as it runs it stands still against the camera'];
  const title = `Projector trimmed to ${rateText(trimmed.filmFps)} fps (${signed(trimmed.change)})`;
  return [title, ...planRows(trimmed, cameraFps)];
}

function storageRows({ video, storage }: CaptureSheet): string[] {
  const rate = `${video.mbitS.toFixed(0)} Mbit/s${video.mbitSIsPlanned ? ' (planning figure)' : ''}`;
  const rows = [
    row(
      'picture',
      `${video.width} x ${video.height}, ${video.sampling}, ${video.bits} bit, ${rateText(video.fps)} fps`,
    ),
    row('data rate', `${rate}, ${storage.gbPerMinute.toFixed(2)} GB a minute`),
    row('this reel', `${storage.gb.toFixed(1)} GB`),
  ];
  const { disk } = storage;
  if (disk === undefined) return rows;
  const room = `${disk.usableGb.toFixed(1)} of ${disk.freeGb.toFixed(1)} GB usable, ${disk.minutes.toFixed(0)} minutes`;
  return [
    ...rows,
    row(
      'disk',
      `${room}, ${disk.reels} ${disk.reels === 1 ? 'reel' : 'reels'} like this: ${disk.fits ? 'fits' : 'DOES NOT FIT'}`,
    ),
  ];
}

/** The sheet as plain text for paper: ASCII, lines of at most 110 characters, a newline at the end. */
export function sheetText(sheet: CaptureSheet): string {
  const { film, projector, framing } = sheet;
  const blades = `${projector.blades} blade${projector.blades === 1 ? '' : 's'}, open ${percent(projector.openShare)}`;
  const picture = `${framing.width} x ${framing.height} pixels, ${framing.pixelsPerMm.toFixed(0)} a mm of film`;
  return [
    'CAPTURE SHEET',
    '',
    `Film: ${film.gauge}, ${film.feet.toFixed(1)} ft (${film.metres.toFixed(1)} m), ${film.frames} frames`,
    row('shot at', `${rateText(sheet.shotFps)} fps`),
    row('projected picture', picture),
    '',
    `Projector as it runs: ${rateText(projector.filmFps)} fps, ${blades}; camera ${rateText(sheet.cameraFps)} fps`,
    ...planRows(sheet.asItRuns, sheet.cameraFps),
    '',
    ...trimmedRows(sheet),
    '',
    'Storage',
    ...storageRows(sheet),
    '',
    'Cautions',
    ...sheet.cautions.flatMap((caution) => wrapped(caution, '  - ', '    ')),
    '',
  ].join('\n');
}
