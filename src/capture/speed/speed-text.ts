import { exposureText, rateText } from '../rate.js';
import type { Remedy } from './remedy.js';
import type { Confidence, SpeedReport } from './measure-speed.js';

const row = (name: string, value: string) => `  ${name.padEnd(18)}${value}`;
const more = (value: string) => row('', value);
const percent = (share: number, digits = 1) => `${(100 * share).toFixed(digits)} %`;
const signed = (share: number, digits = 1) => `${share < 0 ? '-' : '+'}${percent(Math.abs(share), digits)}`;
const hertz = (value: number) => `${Number(value.toFixed(value < 1 ? 3 : 2))} Hz`;

/** A time in the recording, to the hundredth of a second: `0:03.20`, and beyond an hour `1:02:03.20`. */
export function timeText(seconds: number): string {
  const hundredths = Math.round(100 * seconds);
  const [hours, minutes] = [Math.floor(hundredths / 360000), Math.floor(hundredths / 6000) % 60];
  const rest = ((hundredths % 6000) / 100).toFixed(2).padStart(5, '0');
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`;
}

/** How sure the speed is, one clause each. */
export const confidenceWords: Record<Confidence, string> = {
  sure: 'sure: nothing else near the nominal speed fits',
  likely: 'likely: another speed would look the same, but lies much farther from the nominal one',
  open: 'open: another speed would look the same',
  unknown: 'unknown',
};

/** Whose flicker was looked for. */
export function pulseWords(
  speed: SpeedReport['speed'],
  { blades, nominalFps }: SpeedReport['settings'],
): string {
  const rate = speed === undefined ? `about ${rateText(nominalFps)}` : rateText(speed.filmFps);
  return `${blades} ${blades === 1 ? 'blade' : 'blades'} at ${rate} fps`;
}

/** Flicker that could not be told from none: two errors beyond what was found, never less than a tenth of a per cent. */
const unseenBelow = ({ percent, error }: SpeedReport['flicker']) =>
  Math.max(0.1, percent + 2 * error).toFixed(1);

/** Below this the standard error is that of the camera's own clock, of which nothing is known. */
const clockShare = 1e-4;

function speedRows({ speed, settings, confidence, flicker }: SpeedReport): string[] {
  if (speed === undefined) {
    const why = flicker.seen
      ? 'what pulses does not repeat with any speed near the nominal one'
      : 'nothing repeats with any speed near the nominal one';
    return [
      row('projector', `speed unknown: ${why}`),
      more('The exposure may span whole pulses, the light may stand still against the camera,'),
      more('or speed (--film-fps, more than 15 % off) or blades (--blades) are not what was said.'),
    ];
  }
  const { filmFps, error, change, wander, others, from } = speed;
  const within = Math.max(error / filmFps, clockShare);
  const source = from.map((kind) => (kind === 'light' ? 'the light' : 'the changes of picture'));
  return [
    row(
      'projector',
      `${rateText(filmFps)} fps within ${percent(within, 2)}, ${signed(change, 2)} on ${rateText(settings.nominalFps)} fps`,
    ),
    more(confidenceWords[confidence]),
    ...(others.length === 0 ? [] : [more(`it may also be ${others.map(rateText).join(' or ')} fps`)]),
    more(
      `read from ${source.length === 0 ? 'light and pictures together' : source.join(' and ')}; it wanders by ${percent(wander, 2)}`,
    ),
  ];
}

function flickerRows({ speed, flicker, framesRead, settings }: SpeedReport): string[] {
  const seconds = framesRead / settings.cameraFps;
  const beats = speed === undefined ? 0 : speed.beatHz * seconds;
  const pulses =
    speed === undefined
      ? []
      : [
          row(
            'light',
            `${hertz(speed.flickerHz)}; against the camera it ${speed.beatHz * seconds < 0.5 ? 'stands still' : `beats at ${hertz(speed.beatHz)}`}`,
          ),
        ];
  const expected =
    flicker.expectedPercent === undefined
      ? []
      : [more(`blades and exposure make one expect ${flicker.expectedPercent.toFixed(1)} %`)];
  if (!flicker.seen)
    return [
      ...pulses,
      row(
        'flicker',
        `none seen of ${pulseWords(speed, settings)}; less than ${unseenBelow(flicker)} % would not show`,
      ),
      ...expected,
    ];
  return [
    ...pulses,
    row(
      'flicker',
      `${flicker.percent.toFixed(1)} % (within ${flicker.error.toFixed(1)}), ${flicker.stops.toFixed(2)} stops from dark to light`,
    ),
    more('100 x (max - min) / (max + min) of the light from frame to frame (IEEE 1789)'),
    ...expected,
    ...(speed !== undefined && beats < 2 ? [more('fewer than two beats were recorded: record longer')] : []),
  ];
}

function remedyRows(remedy: Remedy | undefined, settings: SpeedReport['settings']): string[] {
  if (remedy === undefined) return [];
  const { trim, exposures, nearest } = remedy;
  const free = ({ exposureS, angle }: Remedy['exposures'][number]) =>
    `${exposureText(exposureS)} (${angle.toFixed(1)} deg)`;
  const trimmed =
    trim === undefined
      ? 'no speed within reach of a trim stands still against the camera'
      : `run the projector at ${rateText(trim.filmFps)} fps (${signed(trim.change, 2)}), expose ${exposureText(trim.exposureS)}`;
  const exposed =
    exposures.length === 0
      ? `none at this speed: a pulse outlasts a frame at ${rateText(settings.cameraFps)} fps`
      : exposures.map(free).join(', ');
  return [
    row('trim', trimmed),
    row('or expose', exposed),
    ...(nearest === undefined
      ? []
      : [more(`nearest to ${exposureText(settings.exposureS!)}: ${free(nearest)}`)]),
  ];
}

function frameRows({ filmOnFrames, framesRead, settings }: SpeedReport): string[] {
  if (filmOnFrames === undefined)
    return [row('film on frames', 'not told by the picture: it hardly changes, or every frame does alike')];
  const { duplicated, blended, lost, exposureS } = filmOnFrames;
  const share = (count: number) => `${count} (${percent(count / framesRead)})`;
  return [
    row(
      'film on frames',
      `${share(duplicated)} duplicated, ${share(blended)} blended, ${lost} film frames lost`,
    ),
    ...(settings.exposureS === undefined
      ? [
          more(
            `with an exposure of about ${exposureText(exposureS)}, which fits best; --shutter names the real one`,
          ),
        ]
      : []),
  ];
}

function jumpRows({ jumps }: SpeedReport): string[] {
  if (jumps.length === 0) return [row('frame line', 'no jumps seen')];
  return jumps.map(({ seconds, share }, i) => {
    const how = Number.isNaN(share)
      ? 'comes into or goes out of view'
      : `moves ${share < 0 ? 'up' : 'down'} by ${percent(Math.abs(share))} of the height`;
    return `  ${(i === 0 ? 'frame line' : '').padEnd(18)}${timeText(seconds)} ${how}`;
  });
}

/** What a test recording tells, as plain ASCII lines, a newline at the end. */
export function speedText(report: SpeedReport): string {
  const { frames, seconds, settings } = report;
  return [
    'SPEED AND FLICKER',
    '',
    row('recording', `${frames} frames, ${seconds.toFixed(1)} s at ${rateText(settings.cameraFps)} fps`),
    ...(report.framesRead < frames
      ? [more(`speed and flicker from the first ${report.framesRead} frames`)]
      : []),
    ...speedRows(report),
    ...flickerRows(report),
    ...remedyRows(report.remedy, settings),
    ...frameRows(report),
    ...jumpRows(report),
    '',
  ].join('\n');
}
