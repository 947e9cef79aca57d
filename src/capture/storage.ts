/** Samples a pixel carries, by chroma subsampling (ITU-R BT.601-7, section 2: 4:4:4, 4:2:2 and their kin). */
export const samplesPerPixel = { '4:4:4': 3, '4:2:2': 2, '4:2:0': 1.5 } as const satisfies Record<
  string,
  number
>;

export type Sampling = keyof typeof samplesPerPixel;

export interface VideoFormat {
  readonly width: number;
  readonly height: number;
  /** Bits a sample: 8, 10, 12 ... */
  readonly bits: number;
  readonly sampling: Sampling;
  /** Frames a second of the recording. */
  readonly fps: number;
}

/** Data rate without compression in Mbit/s (10^6 bit): UHD, 4:2:2, 10 bit, 25 fps is 4147.2. */
export function uncompressedMbitS({ width, height, bits, sampling, fps }: VideoFormat): number {
  return (width * height * bits * samplesPerPixel[sampling] * fps) / 1e6;
}

/**
 * The data rate of recording every frame by itself (intra-frame), for planning, in Mbit/s. Common practice: UHD, 4:2:2,
 * 10 bit at 25 fps takes 400 to 600 Mbit/s, about 4 GB a minute; other formats in proportion to their uncompressed rate.
 */
export function plannedMbitS(format: VideoFormat): number {
  const usual: VideoFormat = { width: 3840, height: 2160, bits: 10, sampling: '4:2:2', fps: 25 };
  return (uncompressedMbitS(format) / uncompressedMbitS(usual)) * mbitSOf(4);
}

/** The data rate in Mbit/s that fills so many GB a minute. */
function mbitSOf(gbAMinute: number): number {
  return (gbAMinute * 8000) / 60;
}

/** GB (10^9 bytes) that one minute takes. */
export function gbPerMinute(mbitS: number): number {
  return (mbitS * 60) / 8000;
}

export interface StorageNeed {
  readonly gbPerMinute: number;
  /** GB (10^9 bytes) for the reel. */
  readonly gb: number;
  /** Present when the free space is known. */
  readonly disk?: {
    readonly freeGb: number;
    /** GB that may be filled: a disk is not filled to the brim. */
    readonly usableGb: number;
    readonly fits: boolean;
    /** Whole reels of this length that fit. */
    readonly reels: number;
    readonly minutes: number;
  };
}

/** Share of the free space that is left alone (common practice, no source). */
const keptFree = 0.1;

/** @param seconds recorded time @param mbitS data rate @param freeBytes free space of the target disk, if known */
export function storageNeed(seconds: number, mbitS: number, freeBytes?: number): StorageNeed {
  const perMinute = gbPerMinute(mbitS);
  const gb = (perMinute * seconds) / 60;
  if (freeBytes === undefined) return { gbPerMinute: perMinute, gb };
  const freeGb = freeBytes / 1e9;
  const usableGb = freeGb * (1 - keptFree);
  const reels = gb > 0 ? Math.floor(usableGb / gb) : 0;
  return {
    gbPerMinute: perMinute,
    gb,
    disk: { freeGb, usableGb, fits: gb <= usableGb, reels, minutes: usableGb / perMinute },
  };
}
