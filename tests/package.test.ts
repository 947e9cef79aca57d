import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot, temporaryFolder } from './cli/gatelight.js';

const packed = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
  cwd: projectRoot,
  encoding: 'utf8',
  shell: process.platform === 'win32',
  stdio: ['ignore', 'pipe', 'ignore'],
});
const [{ files }] = JSON.parse(packed) as [{ files: { path: string; size: number }[] }];
const paths = files.map(({ path }) => path);

/** What a user needs, and nothing else. */
const wanted = [
  /^(package\.json|README\.md|CHANGELOG\.md|LICENSE)$/,
  /^looks\/[\w-]+\.json$/,
  /^dist\/(look-schema\.json|[\w-]+\.wasm|man\/gatelight\.1)$/,
  /^dist\/page\/(index\.html|assets\/[\w.-]+\.(js|css|woff2?|wasm|svg|png|ttf))$/,
  /^dist\/(src|shared\/(tables|demo))\/[\w/-]+\.(js|d\.ts)$/,
];

describe('the package', () => {
  it('holds nothing that a user does not need', () => {
    expect(paths.filter((path) => !wanted.some((kind) => kind.test(path)))).toEqual([]);
    expect(paths.filter((path) => /(^|\/)tests?\/|\.test\.|check-values|write-docs/.test(path))).toEqual([]);
    // The commands are in the bundled files; their modules and types are of no use beside them.
    expect(
      paths.filter((path) =>
        /^dist\/src\/cli\/(commands|completion)\/|^dist\/src\/cli\/.*\.d\.ts$/.test(path),
      ),
    ).toEqual([]);
    expect(paths.filter((path) => path.startsWith('dist/src/cli/bundled/')).length).toBeGreaterThan(5);
  });

  it.each([
    'dist/src/cli/main.js',
    'dist/src/index.js',
    'dist/src/index.d.ts',
    'dist/look-schema.json',
    'dist/man/gatelight.1',
    'dist/page/index.html',
    'dist/apply-engine.wasm',
    'dist/film-engine.wasm',
    'README.md',
    'LICENSE',
  ])('holds %s', (path) => {
    expect(paths).toContain(path);
  });

  // npm puts no manual pages in place on Windows.
  it.skipIf(process.platform === 'win32')('puts the manual page where man looks, beside the command', () => {
    const prefix = temporaryFolder();
    const quietly = ['--offline', '--ignore-scripts', '--no-audit', '--no-fund'];
    execFileSync('npm', ['install', '--global', '--prefix', prefix, ...quietly, projectRoot], {
      stdio: 'pipe',
    });
    expect(readFileSync(join(prefix, 'share/man/man1/gatelight.1'), 'utf8')).toContain('GATELIGHT');
    expect(existsSync(join(prefix, 'bin/gatelight'))).toBe(true);
  });

  it('holds every ready look', () => {
    for (const look of readdirSync(join(projectRoot, 'looks'))) expect(paths).toContain(`looks/${look}`);
  });
});
