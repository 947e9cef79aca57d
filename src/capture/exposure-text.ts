import type { Triple } from '../maths/matrix3.js';
import { exposureLimits, isBurntOut, overallNoise } from './exposure-advice.js';
import type { ExposureTest, StillExposure } from './exposure-test.js';
import { namesApart } from './names-apart.js';

/** A share of the pixels, per cent, short: `0`, `<0.1`, `2.1`, `34`. */
export function shareText(percent: number): string {
  if (percent === 0) return '0';
  if (percent < 0.1) return '<0.1';
  return percent < 10 ? percent.toFixed(1) : percent.toFixed(0);
}

export const signedStops = (stops: number | undefined) =>
  stops === undefined ? '?' : `${stops >= 0.05 ? '+' : ''}${(Math.round(10 * stops) / 10 + 0).toFixed(1)}`;

/** Noise in the shadows, short. */
export const noiseText = ({ shadowNoisePercent }: StillExposure) =>
  shadowNoisePercent === undefined ? '?' : `${overallNoise(shadowNoisePercent).toFixed(1)} %`;

const three = (values: Triple) => values.map((value) => shareText(value).padEnd(6)).join('');

/** Names longer than this are cut in the table, in their middle: they differ at their ends. */
const longestName = 29;

/** Names for the table; where what tells them apart would be cut out, more of them is kept. */
function shortNames(names: readonly string[], longest = longestName): readonly string[] {
  const end = (longest - 3) / 2;
  const cut = names.map((name) =>
    name.length <= longest ? name : `${name.slice(0, end)}...${name.slice(-end)}`,
  );
  return new Set(cut).size === new Set(names).size ? cut : shortNames(names, longest + 2);
}

function tableOf({ stills, take, advice }: ExposureTest): string[] {
  const taken = advice.startsWith('take');
  const names = shortNames(namesApart(stills.map(({ name }) => name)));
  const width = Math.max(5, ...names.map((name) => name.length)) + 2;
  const row = (mark: string, name: string, ...cells: readonly string[]) =>
    `${mark} ${name.padEnd(width)}${cells.join('')}`.trimEnd();
  const wide = (text: string) => text.padEnd(20);
  return [
    row(' ', '', 'exposure  ', wide('burnt out, %'), wide('blocked, %'), 'headroom  ', 'noise in'),
    row(
      ' ',
      'still',
      'stops     ',
      wide('red   green blue'),
      wide('red   green blue'),
      'stops     ',
      'shadows',
    ),
    ...stills.map((still, i) =>
      row(
        taken && i === take ? '>' : ' ',
        names[i],
        signedStops(still.exposureStops).padEnd(10),
        wide(three(still.burntOutPercent)),
        wide(three(still.blockedPercent)),
        signedStops(still.headroomStops).padEnd(10),
        noiseText(still),
      ),
    ),
  ];
}

const stops = (value: number) => {
  const text = Math.abs(value).toFixed(1);
  return `${text} ${text === '1.0' ? 'stop' : 'stops'}`;
};

/** To a tenth, so that what is advised is not too little. */
const roundedUp = (value: number) => Math.ceil(10 * value) / 10;

/** Why the still is the one, one sentence. */
function reason({ stills, take, advice }: ExposureTest): string {
  const { headroomStops = 0, shadowNoisePercent } = stills[take];
  const clean =
    shadowNoisePercent === undefined
      ? ''
      : stills.length > 1
        ? `, and of those its shadows are as clean as any (noise ${noiseText(stills[take])} of the light there)`
        : `; noise in the shadows is ${noiseText(stills[take])} of the light there`;
  const keeps = `It keeps its highlights with ${stops(headroomStops)} to spare for brighter frames${clean}.`;
  if (advice === 'take') return keeps;
  if (advice === 'take-or-go-up')
    return `${keeps} Up to ${stops(headroomStops - exposureLimits.leastHeadroomStops)} more light would still be safe and cleaner.`;
  return `Its highlights are whole, but only ${stops(headroomStops)} are left: a brighter frame of the reel would burn out. Safer: ${stops(roundedUp(exposureLimits.leastHeadroomStops - headroomStops))} less light.`;
}

/** What to take and why. */
export function adviceText(test: ExposureTest): string {
  const best = test.stills[test.take];
  if (test.advice === 'not-one-frame')
    return 'Take none on these figures: the stills do not look like one and the same frame. Take them of one that stands in a cool gate, and change nothing but the exposure. If they are of one, say by what curve they were written (--encoding).';
  if (test.advice === 'no-light') return 'There is no light in these stills.';
  if (test.advice !== 'go-down') return `Take ${best.name}. ${reason(test)}`;
  const over =
    best.headroomStops === undefined
      ? 'by a stop or more (how far it has gone over cannot be told from these stills)'
      : `by ${stops(roundedUp(exposureLimits.leastHeadroomStops - best.headroomStops))}`;
  const dark = test.stills.some((still) => !isBurntOut(still));
  return `Take none of these: ${dark ? 'what shows anything is' : 'all are'} burnt out. Go down from ${best.name} ${over} and test again.`;
}

/** The light's colour has changed when one channel rose by this much more than another, stops. */
const colourChangeSeen = 0.07;

/** What else to know, whole sentences. */
export function notesOf({ stills, sameFrame, colourChangeStops, ceilingFound }: ExposureTest): string[] {
  return [
    ...(ceilingFound === undefined
      ? []
      : [
          `Stills of different exposure end at ${(100 * ceilingFound).toFixed(1)} % of the scale: the camera's channels end there, and it is taken as burnt out.`,
        ]),
    ...(sameFrame && colourChangeStops > colourChangeSeen
      ? [
          `The colour of the light changes with its level (up to ${colourChangeStops.toFixed(2)} stops between channels): set the white balance again at the level you take.`,
        ]
      : []),
    ...(stills.some(({ shadowNoisePercent }) => shadowNoisePercent === undefined)
      ? ['Where the noise is "?", the shadows are blocked, burnt out or nowhere flat.']
      : []),
    ...(stills.length === 1
      ? ['One still only: take the same frame at two or three more levels to compare.']
      : []),
  ];
}

/** The exposure test as plain text: a table, what to take and why, and what else to know. */
export function exposureText(test: ExposureTest): string {
  const notes = notesOf(test);
  return [
    `Exposure test: ${test.stills.length} ${test.stills.length === 1 ? 'still' : 'stills'}`,
    '',
    ...tableOf(test),
    '',
    adviceText(test),
    ...notes.map((note) => `Note: ${note}`),
  ].join('\n');
}
