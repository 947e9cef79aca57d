import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type * as Promises from 'node:fs/promises';
import { describe, expect, it, vi } from 'vitest';
import { writeBeside, writeSafely } from '../../src/files/write-beside-then-rename.js';
import { problemOf, temporaryFolder } from './folder.js';

/** Makes one step of the writing fail with a system code, as a full, locked or simple disk does. */
const failing = vi.hoisted(() => ({ step: '', code: '' }));
/** How files were opened. */
const opened = vi.hoisted((): [path: string, flags: string][] => []);

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof Promises>();
  const guard = (step: string) => {
    if (failing.step === step) throw Object.assign(new Error(failing.code), { code: failing.code });
  };
  return {
    ...real,
    access: async (...args: Parameters<typeof real.access>) => {
      guard('access');
      return real.access(...args);
    },
    link: async (...args: Parameters<typeof real.link>) => {
      guard('link');
      return real.link(...args);
    },
    rename: async (...args: Parameters<typeof real.rename>) => {
      guard('rename');
      return real.rename(...args);
    },
    open: async (...args: Parameters<typeof real.open>) => {
      guard('open');
      opened.push([String(args[0]), String(args[1])]);
      const handle = await real.open(...args);
      const [write, sync] = [handle.writeFile.bind(handle), handle.sync.bind(handle)];
      handle.writeFile = async (data, options) => {
        if (failing.step === 'write') await write('half of it', options);
        guard('write');
        return write(data, options);
      };
      handle.sync = async () => {
        guard('sync');
        return sync();
      };
      return handle;
    },
  };
});

const { path, names } = temporaryFolder();

async function whileFailing<T>(step: string, code: string, work: () => Promise<T>): Promise<T> {
  Object.assign(failing, { step, code });
  try {
    return await work();
  } finally {
    Object.assign(failing, { step: '', code: '' });
  }
}

describe('a disk that fails', () => {
  it.each([
    ['write', 'ENOSPC', 'the disk is full'],
    ['write', 'EDQUOT', 'the quota of disk space is used up'],
    ['write', 'EFBIG', 'is larger than this disk or account can hold'],
    ['write', 'EIO', 'the disk reports an error'],
    ['sync', 'ENOSPC', 'the disk is full'],
    ['open', 'EACCES', 'permission denied'],
    ['open', 'EROFS', 'the disk is read-only'],
    ['open', 'EMFILE', 'too many files are open'],
    ['rename', 'EBUSY', 'is in use by another program'],
    ['rename', 'EXOTIC', 'the system refuses it (EXOTIC)'],
  ])('%s: %s', async (step, code, words) => {
    writeFileSync(path('old'), 'kept');
    const problem = await whileFailing(step, code, () =>
      problemOf(writeSafely(path('old'), 'new', { force: true })),
    );
    expect(problem).toMatchObject({ file: path('old'), what: `cannot be written: ${words}` });
    expect(names()).toEqual(['old']);
    expect(readFileSync(path('old'), 'utf8')).toBe('kept');
  });

  it.each([
    ['EACCES', 'permission denied'],
    ['EROFS', 'the disk is read-only'],
  ])('a folder that takes no files is told before any work: %s', async (code, words) => {
    writeFileSync(path('old'), 'kept');
    for (const name of ['old', 'new']) {
      let worked = false;
      const work = async () => void (worked = true);
      const problem = await whileFailing('access', code, () =>
        problemOf(writeBeside(path(name), { force: true }, work)),
      );
      expect(problem).toMatchObject({ file: path(name), what: `cannot be written: ${words}` });
      expect(worked).toBe(false);
    }
    expect(names()).toEqual(['old']);
  });

  it('throws on what is no error of the system: a bug is not to be hidden', async () => {
    const work = () => writeSafely(path('a'), 7 as unknown as string, { force: false });
    await expect(work()).rejects.toThrow(TypeError);
    expect(names()).toEqual([]);
  });
});

describe('a disk without hard links', () => {
  it.each(['EPERM', 'ENOTSUP', 'ENOSYS', 'EMLINK'])('is written to as well (%s)', async (code) => {
    await whileFailing('link', code, () => writeSafely(path('a'), 'text', { force: false }));
    expect(readFileSync(path('a'), 'utf8')).toBe('text');
    expect(names()).toEqual(['a']);
  });

  it('lets only one of many have the name', async () => {
    const texts = ['one', 'two', 'three', 'four'];
    const results = await whileFailing('link', 'EPERM', () =>
      Promise.allSettled(texts.map((data) => writeSafely(path('a'), data, { force: false }))),
    );
    expect(results.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(texts).toContain(readFileSync(path('a'), 'utf8'));
    expect(names()).toEqual(['a']);
  });
});

it('a disk that cannot flush still gets the file', async () => {
  await whileFailing('sync', 'EINVAL', () => writeSafely(path('a'), 'text', { force: false }));
  expect(existsSync(path('a'))).toBe(true);
});

it('never writes into a file that is there already: each temporary is new, and named anew', async () => {
  opened.length = 0;
  for (const name of ['a', 'b']) await writeSafely(path(name), 'text', { force: true });
  const temporaries = opened.filter(([, flags]) => flags !== 'r');
  expect(temporaries.map(([, flags]) => flags)).toEqual(['wx', 'wx']);
  expect(new Set(temporaries.map(([name]) => name)).size).toBe(2);
});
