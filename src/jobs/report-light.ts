import { type CaptureFinding, readinessText } from '../capture/capture-finding.js';
import { balanceLimits, turnText } from '../capture/gate-balance-finding.js';
import { gateLightFindings } from '../capture/gate-light-findings.js';
import type { Corners, GateLight } from '../capture/gate-light.js';
import { cropStill, litStill, type StillSignal } from '../capture/still-light.js';
import type { Camera } from '../look/sections/camera.js';
import type { Picture } from '../picture/picture.js';
import { fitWithin } from '../picture/resample.js';
import { drawHeadroom } from '../preview/headroom-plot.js';
import { palette } from '../preview/palette.js';
import { drawReportSheet, type SheetPicture } from '../preview/report-sheet.js';
import { drawStopsMap, stopsLegend } from '../preview/stops-map.js';
import type { LabelFonts } from '../preview/typeface.js';
import { drawWhitePlot } from '../preview/white-plot.js';
import { channelEndMarks, channelMarks } from './channel-ends.js';
import { fileName } from './file-name.js';
import { shown } from './preview-look.js';

/** As large as a picture of the sheet. */
const mapWithin = { width: 740, height: 555 };
/** Room for the words of a map, whatever the field's form. */
const leastMap = { width: 240, height: 140 };

const stopsText = (stops: number) => `${(Math.round(100 * stops) / 100 + 0).toFixed(2)} stops`;
const cornersText = ({ topLeft, topRight, bottomLeft, bottomRight }: Corners) =>
  [topLeft, topRight, bottomLeft, bottomRight].map(stopsText) as [string, string, string, string];

function evennessPicture({ evenness, field }: GateLight, fonts: LabelFonts): SheetPicture[] {
  if (evenness === undefined) return [];
  const size = fitWithin({ width: field.width * 1000, height: field.height * 1000 }, mapWithin);
  const { corners, hotSpot, map } = evenness;
  return [
    {
      part: 'evenness',
      name: 'stops below the brightest part',
      display: drawStopsMap(
        { ...map, hotSpot, corners: cornersText(corners) },
        { width: Math.max(leastMap.width, size.width), height: Math.max(leastMap.height, size.height) },
        fonts,
      ),
      legend: stopsLegend,
    },
  ];
}

/** The box of the plot, as a legend shows it. */
const unseenBox = {
  bed: palette.bed,
  ink: palette.quietText,
  hatching: (x: number, y: number) =>
    x > 5 && x < 24 && y > 1 && y < 16 && !(x > 7 && x < 22 && y > 3 && y < 14),
};

function whitePicture({ balance }: GateLight, fonts: LabelFonts): SheetPicture[] {
  if (balance === undefined) return [];
  const { miredShift, duvShift } = balance;
  const turn = turnText(balance);
  const unseen = { mired: balanceLimits.mired.good, duv: balanceLimits.duv.good };
  return [
    {
      part: 'white balance',
      name: 'the light, and which way to turn it',
      display: drawWhitePlot({ miredShift, duvShift, unseen }, fonts),
      legend: [
        { ...unseenBox, text: 'here nobody sees a difference from the camera’s white' },
        { text: turn === undefined ? 'The two agree.' : `The arrow: ${turn}.` },
      ],
    },
  ];
}

const roomText = (stops: number | undefined) =>
  stops === undefined
    ? 'not known'
    : stops > 0
      ? `${stops.toFixed(2)} stops left`
      : `${(-stops).toFixed(2)} stops over`;

const sentencesOf = (findings: readonly CaptureFinding[]) =>
  findings.map(({ verdict, sentence, hint }) =>
    [
      verdict === 'good' ? '' : verdict === 'note' ? 'Note: ' : 'FAULT: ',
      sentence,
      hint === undefined ? '' : ` ${hint}`,
    ].join(''),
  );

/**
 * A measured gate light as a picture: the still with what is burnt out or blocked, its evenness, where its colour lies
 * against the camera's white and which way to turn it, and the exposure that is left by channel.
 * @param light of measureGateLight for the same still
 */
export function reportLight(
  light: GateLight,
  still: { readonly name: string; readonly picture: Picture },
  camera: Camera,
  signal: StillSignal,
  fonts: LabelFonts,
): Picture {
  const findings = gateLightFindings(light);
  const lit = cropStill(litStill(still.picture, signal), light.field);
  const bars = channelMarks.map(({ name, blocked }, c) => {
    const stops = light.exposure.channelStopsLeft[c];
    return { name, ink: blocked.ink, stops, words: roomText(stops) };
  });
  return drawReportSheet(
    {
      title: 'Gate light',
      headline: readinessText('The light', findings),
      pictures: [
        {
          part: 'open gate',
          name: fileName(still.name),
          display: shown(lit.picture, camera),
          ...channelEndMarks(lit),
        },
        ...evennessPicture(light, fonts),
        ...whitePicture(light, fonts),
        { part: 'exposure', name: 'how far the brightest parts reach', display: drawHeadroom(bars, fonts) },
      ],
      sentences: sentencesOf(findings),
    },
    fonts,
  );
}
