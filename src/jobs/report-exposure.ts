import { adviceText, noiseText, notesOf, signedStops } from '../capture/exposure-text.js';
import type { ExposureTest, StillExposure, TestStill } from '../capture/exposure-test.js';
import { namesApart } from '../capture/names-apart.js';
import { cropStill, litStill, type StillSignal } from '../capture/still-light.js';
import type { Camera } from '../look/sections/camera.js';
import type { Box } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { drawHeadroom, type HeadroomBar } from '../preview/headroom-plot.js';
import { palette } from '../preview/palette.js';
import { drawReportSheet, type SheetPicture } from '../preview/report-sheet.js';
import type { LabelFonts } from '../preview/typeface.js';
import { channelEndMarks } from './channel-ends.js';
import { shown } from './preview-look.js';

function roomWords({ headroomStops, burntOutPercent }: StillExposure): string {
  if (headroomStops === undefined)
    return Math.max(...burntOutPercent) > 0 ? 'over, unknown how far' : 'not known';
  return headroomStops < 0
    ? `${(-headroomStops).toFixed(1)} stops over`
    : `${headroomStops.toFixed(1)} stops left`;
}

function barsOf({ stills, take, advice }: ExposureTest): HeadroomBar[] {
  const names = namesApart(stills.map(({ name }) => name));
  return stills.map((still, i) => ({
    name: names[i],
    ink: advice.startsWith('take') && i === take ? palette.green : palette.grey,
    stops: still.headroomStops,
    words: `${roomWords(still)}, noise ${noiseText(still)}`,
  }));
}

/**
 * An exposure test as a picture: the stills side by side with what is burnt out and blocked marked channel by channel, how
 * much room each leaves, and which one to take.
 * @param test of testExposure for the same stills, signal and area
 */
export function reportExposure(
  test: ExposureTest,
  stills: readonly TestStill[],
  camera: Camera,
  signal: StillSignal,
  area: Box | undefined,
  fonts: LabelFonts,
): Picture {
  const { take, advice, ceilingFound } = test;
  const names = namesApart(stills.map(({ name }) => name));
  const pictures = stills.map(({ picture }, i): SheetPicture => {
    const whole = litStill(
      picture,
      ceilingFound === undefined ? signal : { ...signal, ceiling: ceilingFound },
    );
    const lit = area === undefined ? whole : cropStill(whole, area);
    const { marks, legend } = channelEndMarks(lit);
    const taken = advice.startsWith('take') && i === take;
    return {
      part: taken ? 'take this one' : `exposure ${signedStops(test.stills[i].exposureStops)} stops`,
      name: names[i],
      display: shown(lit.picture, camera),
      marks,
      legend: legend.length > 0 ? legend : [{ text: 'nothing burnt out, nothing blocked' }],
    };
  });
  return drawReportSheet(
    {
      title: 'Exposure test',
      headline: adviceText(test),
      pictures: [
        ...pictures,
        {
          part: 'headroom',
          name: 'how far the brightest parts reach',
          display: drawHeadroom(barsOf(test), fonts),
        },
      ],
      sentences: notesOf(test),
    },
    fonts,
  );
}
