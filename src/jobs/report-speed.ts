import { rateText } from '../capture/rate.js';
import type { SpeedReport } from '../capture/speed/measure-speed.js';
import { confidenceWords, pulseWords, timeText } from '../capture/speed/speed-text.js';
import type { Picture } from '../picture/picture.js';
import { drawPulsePlot, type PulsePanel, type PulsePoint } from '../preview/pulse-plot.js';
import type { LabelFonts } from '../preview/typeface.js';
import { fileName } from './file-name.js';

/** Beats that the first panel shows where the recording has them, and the most frames that are still told apart in it. */
const shownBeats = 6;
const mostFrames = 250;

/** Ticks at round seconds, up to eight steps. */
function secondTicks(to: number): PulsePanel['ticks'] {
  const power = 10 ** Math.floor(Math.log10(to));
  const step = [0.1, 0.2, 0.5].map((part) => part * power).find((step) => to / step <= 8) ?? power;
  return Array.from({ length: Math.floor(to / step + 1e-9) + 1 }, (_, i) => ({
    at: i * step,
    words: `${Number((i * step).toFixed(3))} s`,
  }));
}

const shareOf = (logarithm: number) => Math.exp(logarithm) - 1;

function overTime({ light, wave, flicker, speed, settings, jumps }: SpeedReport): PulsePanel {
  const { cameraFps } = settings;
  const beats =
    speed === undefined || speed.beatHz === 0 ? Infinity : (shownBeats / speed.beatHz) * cameraFps;
  const frames = Math.min(light.length, mostFrames, Math.max(cameraFps, Math.ceil(beats)));
  const to = frames / cameraFps;
  const points = (values: Float64Array): PulsePoint[] =>
    Array.from(values.subarray(0, frames), (value, n) => ({ at: n / cameraFps, share: shareOf(value) }));
  return {
    heading: `Light from frame to frame, as recorded${flicker.seen ? ' (dots) and as flicker alone would be (line)' : ''}`,
    dots: points(light),
    line: flicker.seen ? points(wave) : [],
    from: 0,
    to,
    ticks: secondTicks(to),
    marks: jumps.map(({ seconds }) => seconds).filter((seconds) => seconds < to),
  };
}

function overPulse({ light, wave, flicker, pulsePhases }: SpeedReport): PulsePanel {
  const points = (values: Float64Array) =>
    Array.from(values, (value, n) => ({
      at: pulsePhases[n] - Math.floor(pulsePhases[n]),
      share: shareOf(value),
    }));
  return {
    heading: 'All frames laid over one pulse of the light',
    dots: points(light),
    line: flicker.seen ? points(wave).sort((a, b) => a.at - b.at) : [],
    from: 0,
    to: 1,
    ticks: [0, 0.25, 0.5, 0.75, 1].map((at) => ({ at, words: at === 0 ? '0' : `${at} pulse` })),
    marks: [],
  };
}

function sentencesOf({ speed, confidence, flicker, jumps, settings }: SpeedReport): string[] {
  const rate =
    speed === undefined
      ? 'Speed of the projector unknown.'
      : `Projector ${rateText(speed.filmFps)} fps, camera ${rateText(settings.cameraFps)} fps. ${capital(confidenceWords[confidence])}.`;
  const beat =
    speed === undefined || speed.beatHz < 0.01 ? '' : `, beating at ${Number(speed.beatHz.toFixed(2))} Hz`;
  const light = flicker.seen
    ? `Flicker ${flicker.percent.toFixed(1)} %, ${flicker.stops.toFixed(2)} stops from dark to light${beat}.`
    : `No flicker seen of ${pulseWords(speed, settings)}.`;
  const line =
    jumps.length === 0
      ? []
      : [
          `The frame line ${jumps.some(({ share }) => Number.isNaN(share)) ? 'jumps, comes into or goes out of view' : 'jumps'} at ${jumps
            .slice(0, 6)
            .map(({ seconds }) => timeText(seconds))
            .join(', ')}${jumps.length > 6 ? ' and later' : ''}.`,
        ];
  return [rate, light, ...line];
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

/** What a test recording tells, as a picture. @param title the file's name, with or without its folders */
export function reportSpeed(report: SpeedReport, title: string, fonts: LabelFonts): Picture {
  const panels = [overTime(report), ...(report.speed === undefined ? [] : [overPulse(report)])];
  return drawPulsePlot({ title: fileName(title), sentences: sentencesOf(report), panels }, fonts);
}
