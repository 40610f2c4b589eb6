import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/**
 * The layers are kept by the linter's rules for each folder. A rule that reads nothing passes, so each is seen to catch
 * a violation that is put in front of it. All violations are seeded at once and linted in one run.
 */
const root = resolve(import.meta.dirname, '../..');

const forbidden: readonly (readonly [string, string, string])[] = [
  ['core/money', '../../ledger/entry.ts', 'units, money and dates know nothing of the ledger'],
  ['core/dates', '../../workbook/store/act.ts', 'dates do not know the workbook'],
  ['core/ledger', 'better-sqlite3', 'the ledger has no database'],
  ['core/gate', '../../contract/gate.ts', 'the domain does not know the contract'],
  ['core/progress', 'node:fs', 'the domain has no disk'],
  ['core/calculators', '../../contract/gate.ts', 'calculators are pure'],
  ['core/exchange', '../../procedures/host.ts', 'exchange does not know the procedures'],
  ['core/contract', '../../workbook/store/act.ts', 'the contract does not know the store'],
  ['core/workbook', '../../procedures/host.ts', 'the workbook does not know the procedures'],
  ['core/procedures', 'drizzle-orm', 'only the workbook imports the database'],
  ['core/procedures', '../../../electron/launch.ts', 'nothing imports a shell'],
  ['renderer/app', '../../../core/procedures/host.ts', 'the renderer goes through the contract'],
  ['renderer/parts', 'electron', 'the renderer does not know electron'],
  ['renderer/screens', '../orders/orders.tsx', 'screens do not import one another'],
  ['electron/browser', '../../../core/workbook/store/act.ts', 'shells know the procedures only'],
];
const allowed = ['core/progress', '../../dates/calendar-date.ts'] as const;

const folders: string[] = [];
const caught = new Set<string>();
const fileOf = new Map<string, string>();
const keyOf = (folder: string, specifier: string): string => `${folder} ${specifier}`;

function seed(folder: string, specifier: string): void {
  const made = mkdtempSync(join(root, folder, 'seeded-'));
  folders.push(made);
  mkdirSync(made, { recursive: true });
  const path = join(made, 'seeded.ts');
  writeFileSync(path, `import { thing } from '${specifier}';\n\nexport const other = thing;\n`);
  fileOf.set(keyOf(folder, specifier), path);
}

function lintAll(): string {
  const biome = join(root, 'node_modules/.bin/biome');
  try {
    return execFileSync(biome, ['lint', '--reporter=json', '--max-diagnostics=200', ...fileOf.values()], {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
  } catch (error) {
    return (error as { stdout: string }).stdout;
  }
}

beforeAll(() => {
  try {
    for (const [folder, specifier] of [...forbidden, allowed]) seed(folder, specifier);
    const report = JSON.parse(lintAll()) as { diagnostics: { category: string; location: { path: unknown } }[] };
    for (const { category, location } of report.diagnostics) {
      if (category.endsWith('noRestrictedImports')) caught.add(JSON.stringify(location.path));
    }
  } finally {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  }
}, 120_000);

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

const isCaught = (folder: string, specifier: string): boolean => {
  const path = fileOf.get(keyOf(folder, specifier)) ?? 'nothing';
  const place = relative(root, dirname(path));
  return [...caught].some((found) => found.includes(place));
};

describe('import rules', () => {
  it.each(forbidden)('%s may not import %s: %s', (folder, specifier) => {
    expect(isCaught(folder, specifier)).toBe(true);
  });

  it('lets a domain folder import what stands below it', () => {
    expect(isCaught(...allowed)).toBe(false);
  });
});
