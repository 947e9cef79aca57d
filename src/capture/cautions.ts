import type { CaptureSheet } from './sheet.js';

type Sheet = Omit<CaptureSheet, 'cautions'>;

/** What can hurt people or film: on every sheet. */
const always = [
  'Projector lamps and lamp houses burn: let them cool before a change. Mains parts are for licensed hands; follow the local code.',
  'Do not look into the open gate or the beam. Never let film stand in front of a hot lamp.',
  'Film that smells of vinegar, is brittle, shrunken or mouldy does not belong in a projector: wear gloves, air the room, ask an archive.',
  'Film of these gauges is safety film as a rule. If a reel may be nitrate, do not run or heat it: ask the fire service or an archive.',
  'The exposures hold for blades of equal width and light. Unequal blades flicker at the film rate too: expose for 1 / film rate.',
];

/** Flicker above this modulation is seen by most people on a light picture (common practice, no source). */
const visibleModulation = 0.01;

function flickerCautions({ asItRuns, cameraFps }: Sheet): string[] {
  if (asItRuns.exposures.length === 0)
    return [
      `One period of the flicker is longer than a video frame at ${cameraFps} fps: no exposure is free of flicker. Use a lower camera rate or more blades.`,
    ];
  const best = Math.min(...asItRuns.exposures.map(({ nearest }) => nearest.modulation));
  if (best < visibleModulation) return [];
  return [
    'No shutter speed on the list meets a flicker-free time: set it in fine steps if the camera can, or trim the projector.',
    'With a rolling shutter what is left shows as bands that drift through the picture, not as a flicker of the whole.',
  ];
}

function movementCautions({ asItRuns: { cadence, speed } }: Sheet): string[] {
  const cautions: string[] = [];
  if (cadence.lost > 0)
    cautions.push('Some film frames fall between two exposures and are lost: use a higher camera rate.');
  if (cadence.pattern === undefined)
    cautions.push(
      'Projector and camera drift against each other: duplicated and blended frames come and go.',
    );
  if (Math.abs(speed.factor - 1) > 0.001)
    cautions.push(
      `Play the recording at ${(100 * speed.correction).toFixed(1)} % for the speed at which it was shot.`,
    );
  return cautions;
}

function storageCautions({ storage }: Sheet): string[] {
  return storage.disk?.fits === false ? ['The disk has not enough free space for this reel.'] : [];
}

/** The cautions of one sheet: what this shoot must watch first, then what holds for every shoot. */
export function cautionsFor(sheet: Sheet): readonly string[] {
  return [...flickerCautions(sheet), ...movementCautions(sheet), ...storageCautions(sheet), ...always];
}
