import { correlatedColourTemperature, uvPrimeOfXyz } from '../colour/chromaticity.js';
import { type Primaries } from '../colour/primaries/index.js';
import { rgbToXyz, whiteOf } from '../colour/primaries/rgb-matrix.js';
import { transform3, type Triple } from '../maths/matrix3.js';
import type { Box } from '../picture/canvas.js';
import type { Picture } from '../picture/picture.js';
import { type FieldCell, fieldCells, gateOpening } from './gate-field.js';
import {
  type ChannelEnds,
  channelEnds,
  cropStill,
  type LitStill,
  litStill,
  speckShare,
  type StillSignal,
} from './still-light.js';

export interface GateLightSignal extends StillSignal {
  readonly primaries: Primaries;
  /** Colour temperature that the camera's white balance is set to, if it is known. */
  readonly balanceKelvin?: number;
}

/** How far the light is from the camera's white balance. */
export interface LightBalance {
  /** Colour temperature of the light, as a camera balanced to `whiteKelvin` sees it. */
  readonly kelvin: number;
  readonly whiteKelvin: number;
  /** Whether the camera's white balance was told; else it is taken as the white of its primaries. */
  readonly whiteTold: boolean;
  /** Mired of the light less mired of the balance: positive is too warm. */
  readonly miredShift: number;
  /** Distance from Planck's locus (CIE 1960 u v) less that of the balance: positive is too green, negative too pink. */
  readonly duvShift: number;
}

/** Stops relative to the brightest part of the field, 0 or below. */
export interface Corners {
  readonly topLeft: number;
  readonly topRight: number;
  readonly bottomLeft: number;
  readonly bottomRight: number;
}

export interface Evenness {
  /**
   * Middle of the brightest part, as shares of the field's sides from its top left, 0..1; of a ring, or of parts that lie
   * apart, the brightest place.
   */
  readonly hotSpot: { readonly across: number; readonly down: number };
  readonly corners: Corners;
  /** Stops between the brightest and the darkest part. */
  readonly spreadStops: number;
  /** Stops of every part of the field against the brightest, row by row from the top left, and how many to a row. */
  readonly map: { readonly stops: Float64Array; readonly across: number };
  /** Greatest distance in CIE 1976 u' v' from the colour in the middle: the light's colour drifts across the frame. */
  readonly colourDrift: number;
}

export interface Exposure {
  readonly burntOutPercent: Triple;
  readonly blockedPercent: Triple;
  /**
   * Stops by which the exposure may rise before the first channel clips; negative: by which it must fall. Undefined
   * when no channel is left to tell how far it has gone over.
   */
  readonly stopsLeft?: number;
  /** The same channel by channel; undefined where a channel does not tell. */
  readonly channelStopsLeft: readonly (number | undefined)[];
  /** The channel that clips first: 0 red, 1 green, 2 blue. */
  readonly firstToClip: 0 | 1 | 2;
  /** A channel of which much has one level, the highest, below the end of the scale: it may have ended there. */
  readonly flatTop?: { readonly channel: 0 | 1 | 2; readonly level: number; readonly percent: number };
}

/** The open gate, as one still of it shows it. */
export interface GateLight {
  /** The part of the still that is looked at: the gate's opening without its mask. */
  readonly field: Box;
  /** Undefined when too little of the middle is uncut, or dark. */
  readonly balance?: LightBalance;
  /** Undefined when it is dark, or so far burnt out that its shape is lost. */
  readonly evenness?: Evenness;
  readonly exposure: Exposure;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The middle of the field: half of its width and height. */
const isMiddle = ({ across, down }: FieldCell) =>
  Math.abs(across - 0.5) < 0.25 && Math.abs(down - 0.5) < 0.25;

/** The cells in the middle; all of a field that has too few for a middle. */
function middleOf(cells: readonly FieldCell[]): readonly FieldCell[] {
  const middle = cells.filter(isMiddle);
  return middle.length > 0 ? middle : cells;
}

const isLit = ({ rgb }: FieldCell) => Math.min(...rgb) > 0;

/** Mean light of some cells, channel by channel. */
function meanRgb(cells: readonly FieldCell[]): Triple {
  const channel = (c: 0 | 1 | 2) => mean(cells.map(({ rgb }) => rgb[c]));
  return [channel(0), channel(1), channel(2)];
}

function balanceOf(cells: readonly FieldCell[], signal: GateLightSignal): LightBalance | undefined {
  const middle = middleOf(cells);
  const good = middle.filter((cell) => !cell.burntOut && isLit(cell));
  if (good.length === 0 || good.length < middle.length / 4) return undefined;
  const rgb = meanRgb(good);
  const seen = correlatedColourTemperature(transform3(rgbToXyz(signal.primaries), rgb));
  const white = correlatedColourTemperature(whiteOf(signal.primaries));
  const miredShift = 1e6 / seen.kelvin - 1e6 / white.kelvin;
  const whiteKelvin = signal.balanceKelvin ?? white.kelvin;
  // Shifts in mired mean nearly the same from one white to another; kelvin do not.
  const kelvin = signal.balanceKelvin === undefined ? seen.kelvin : 1e6 / (1e6 / whiteKelvin + miredShift);
  const whiteTold = signal.balanceKelvin !== undefined;
  return { kelvin, whiteKelvin, whiteTold, miredShift, duvShift: seen.duv - white.duv };
}

/** Cells that make up the brightest part: one in sixteen. */
const brightestShare = 1 / 16;
/** A place that is darker, in stops, is not in the brightest part. */
const brightestStops = 0.1;

/**
 * Middle of the brightest cells, unless it is dark there: a lamp's filament or a ring of lamps leaves a hole.
 * @param brightest cells, the brightest first
 * @param stopsAt of the cell nearest to a place
 */
function hotSpotOf(
  brightest: readonly FieldCell[],
  stopsAt: (place: Evenness['hotSpot']) => number,
): Evenness['hotSpot'] {
  const middle = {
    across: mean(brightest.map(({ across }) => across)),
    down: mean(brightest.map(({ down }) => down)),
  };
  const { across, down } = stopsAt(middle) < -brightestStops ? brightest[0] : middle;
  return { across, down };
}

function evennessOf(cells: readonly FieldCell[], primaries: Primaries): Evenness | undefined {
  const good = cells.filter((cell) => !cell.burntOut && isLit(cell));
  // Where cells are burnt out the light is flat by force: neither hot spot nor fall-off can be read from it.
  if (good.length < cells.length) return undefined;
  const matrix = rgbToXyz(primaries);
  const xyz = cells.map(({ rgb }) => transform3(matrix, rgb));
  const luminance = xyz.map(([, y]) => y);
  const order = [...cells.keys()].sort((a, b) => luminance[b] - luminance[a]);
  const brightest = order.slice(0, Math.max(1, Math.round(brightestShare * cells.length)));
  const top = mean(brightest.map((i) => luminance[i]));
  const stops = (i: number) => Math.log2(luminance[i] / top);
  const lastColumn = cells.findIndex(({ down }) => down !== cells[0].down) - 1;
  const width = lastColumn < 0 ? cells.length : lastColumn + 1;
  const corner = (i: number) => Math.min(0, stops(i));
  const [u, v] = uvPrimeOfXyz(transform3(matrix, meanRgb(middleOf(cells))));
  const drift = xyz.map((colour) => {
    const [cellU, cellV] = uvPrimeOfXyz(colour);
    return Math.hypot(cellU - u, cellV - v);
  });
  return {
    hotSpot: hotSpotOf(
      brightest.map((i) => cells[i]),
      ({ across, down }) => {
        const row = Math.floor((down * cells.length) / width);
        return stops(row * width + Math.floor(across * width));
      },
    ),
    corners: {
      topLeft: corner(0),
      topRight: corner(width - 1),
      bottomLeft: corner(cells.length - width),
      bottomRight: corner(cells.length - 1),
    },
    spreadStops: Math.max(0, -stops(order[order.length - 1])),
    map: { stops: Float64Array.from(cells, (_, i) => stops(i)), across: width },
    colourDrift: Math.max(...drift),
  };
}

/**
 * How far a burnt-out channel has gone over, from the channel that is exposed least: the light has one colour, so
 * their ratio where both are whole holds everywhere.
 * @returns stops, negative; undefined where no cell has both whole, or the least exposed is burnt out too
 */
function stopsOver(cells: readonly FieldCell[], fullLight: number, channel: 0 | 1 | 2): number | undefined {
  const whole = cells.filter((cell) => !cell.burntOut && isLit(cell));
  if (whole.length === 0) return undefined;
  const rgb = meanRgb(whole);
  const least = rgb.indexOf(Math.min(...rgb));
  const highest = Math.max(...cells.map((cell) => cell.rgb[least]));
  if (least === channel || highest >= 0.99 * fullLight) return undefined;
  return Math.min(0, Math.log2((fullLight * rgb[least]) / (rgb[channel] * highest)));
}

/** The lowest of three numbers, and whose it is. */
function lowest(values: readonly number[]): { value: number; channel: 0 | 1 | 2 } {
  const value = Math.min(...values);
  return { value, channel: values.indexOf(value) as 0 | 1 | 2 };
}

/**
 * Even light that is not clipped spreads over more levels, by noise and by its fall-off to the corners (common practice, no
 * source).
 */
const flatPercent = 30;

function flatTopOf(ends: readonly ChannelEnds[]): Exposure['flatTop'] {
  const most = Math.max(...ends.map(({ topPercent }) => topPercent));
  const channel = ends.findIndex(({ topPercent }) => topPercent === most) as 0 | 1 | 2;
  if (most < flatPercent || ends[channel].headroomStops === 0) return undefined;
  return { channel, level: ends[channel].topLevel, percent: most };
}

function exposureOf(still: LitStill, cells: readonly FieldCell[]): Exposure {
  const ends = channelEnds(still);
  const burnt: Triple = [ends[0].burntOutPercent, ends[1].burntOutPercent, ends[2].burntOutPercent];
  const isOver = (c: number) => burnt[c] > 100 * speckShare;
  const left = ([0, 1, 2] as const).map((c) =>
    isOver(c) ? stopsOver(cells, still.fullLight, c) : ends[c].headroomStops,
  );
  const known = left.every((stops) => stops !== undefined);
  const worst = lowest(known ? left : burnt.map((percent) => -percent));
  const flatTop = flatTopOf(ends);
  return {
    burntOutPercent: burnt,
    blockedPercent: [ends[0].blockedPercent, ends[1].blockedPercent, ends[2].blockedPercent],
    ...(known ? { stopsLeft: worst.value } : {}),
    channelStopsLeft: left,
    firstToClip: worst.channel,
    ...(flatTop === undefined ? {} : { flatTop }),
  };
}

/**
 * Reads a still of the open gate without film: its colour against the camera's white balance, how even it is, and how far its
 * exposure may rise. Colour is that of the middle of the frame (half its width and height); the frame is read in
 * cells, each the mean of the middle half of its pixels, so that dust and noise count little.
 * @param still code values as the camera wrote them, any depth
 */
export function measureGateLight(still: Picture, signal: GateLightSignal): GateLight {
  const whole = litStill(still, signal);
  const field = gateOpening(whole);
  const cells = fieldCells(whole, field);
  const [balance, evenness] = [balanceOf(cells, signal), evennessOf(cells, signal.primaries)];
  return {
    field,
    ...(balance === undefined ? {} : { balance }),
    ...(evenness === undefined ? {} : { evenness }),
    exposure: exposureOf(cropStill(whole, field), cells),
  };
}
