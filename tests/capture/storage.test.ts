import { describe, expect, it } from 'vitest';
import { dataRateRows, uncompressedUhd } from '../../shared/check-values/capture.js';
import { gbPerMinute, plannedMbitS, storageNeed, uncompressedMbitS } from '../../src/capture/storage.js';

const uhd = { width: 3840, height: 2160, bits: 10, sampling: '4:2:2', fps: 25 } as const;

describe('storage', () => {
  it.each(dataRateRows)('%d Mbit/s: %d GB a minute', (mbitS, gb) => {
    expect(gbPerMinute(mbitS)).toBeCloseTo(gb, 9);
  });

  it('uncompressed UHD 4:2:2 10 bit 25 fps', () => {
    expect(uncompressedMbitS(uhd)).toBeCloseTo(uncompressedUhd, 6);
  });

  it('plans 4 GB a minute for it, and in proportion for others', () => {
    expect(gbPerMinute(plannedMbitS(uhd))).toBeCloseTo(4, 9);
    expect(plannedMbitS({ ...uhd, width: 1920, height: 1080 })).toBeCloseTo(plannedMbitS(uhd) / 4, 9);
  });

  it('says how many reels fit, a tenth of the free space left alone', () => {
    const { gb, disk } = storageNeed(200, 1600 / 3, 100e9);
    expect(gb).toBeCloseTo(40 / 3, 9);
    expect(disk).toMatchObject({ fits: true, reels: 6 });
    expect(disk?.usableGb).toBeCloseTo(90, 9);
    expect(disk?.minutes).toBeCloseTo(22.5, 9);
  });

  it('a full disk holds nothing', () => {
    expect(storageNeed(200, 500, 0).disk).toMatchObject({ fits: false, reels: 0, minutes: 0 });
  });
});
