import path from 'node:path';
import type { Configuration } from 'electron-builder';

/** What differs from one packaging to the next. */
export interface PackagePlaces {
  /** The staged program. */
  readonly app: string;
  /** Where the packages go. */
  readonly out: string;
  /** Pictures of the icon, one file for each size. */
  readonly icons: string;
  /** Electron's program, unpacked or as its ZIP; fetched by its pinned version where none is named. */
  readonly electronDist: string | null;
  readonly electronVersion: string;
}

/**
 * The fuses, burned into Electron's program: each way in that the program does not need is shut for good. The store, the solver and PDFium run
 * in this process and its threads, so nothing starts the program as a bare Node. Integrity is checked on macOS and Windows only.
 *
 * Source: Electron's security checklist, item 19, and its page on fuses.
 */
export const FUSES = {
  runAsNode: false,
  enableCookieEncryption: true,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  enableEmbeddedAsarIntegrityValidation: true,
  onlyLoadAppFromAsar: true,
  loadBrowserProcessSpecificV8Snapshot: false,
  grantFileProtocolExtraPrivileges: false,
} as const satisfies NonNullable<Configuration['electronFuses']>;

/**
 * What packages say of the program. A `deb` must name a page and somebody to write to: there are none, so both are names that are reserved for
 * nobody. Whoever gives packages out puts their own here.
 */
export const ABOUT = {
  description: 'Keeps a household’s cars going',
  homepage: 'https://trunnion.invalid/',
  desktopName: 'trunnion.desktop',
  author: { name: 'The Trunnion authors', email: 'authors@trunnion.invalid' },
} as const;

/** What must lie outside the archive: programs the system loads itself, and what threads run, with the packages they ask for. */
export const UNPACKED = ['**/*.node', 'node_modules/@img/**', 'dist/main/*-worker.js', 'node_modules/highs/**', 'node_modules/@hyzyla/pdfium/**', 'package.json'];

/**
 * The settings of the packager. The staged folder holds just what goes out, so nothing is collected, compiled or fetched for it. Those of macOS
 * and Windows were never run; nothing is signed or notarised unless whoever packages has an identity.
 */
export function packageConfig({ app, out, icons, electronDist, electronVersion }: PackagePlaces): Configuration {
  return {
    appId: 'org.trunnion.desktop',
    productName: 'Trunnion',
    copyright: 'Copyright (c) 2026 The Trunnion authors; licences.txt names those of its parts',
    directories: { app, output: out, buildResources: icons },
    electronVersion,
    electronDist,
    electronFuses: FUSES,
    asar: true,
    asarUnpack: UNPACKED,
    files: ['**/*', { from: path.join(app, 'node_modules'), to: 'node_modules', filter: ['**/*'] }],
    extraResources: [{ from: path.join(app, '..', 'licences.txt'), to: 'licences.txt' }],
    // Answering no tells that the packages are here already.
    beforeBuild: () => Promise.resolve(false),
    publish: null,
    artifactName: 'trunnion-${version}-${os}-${arch}.${ext}',
    electronLanguages: ['en-GB', 'en-US'],
    // Static, without the FUSE library of old; the older tools would start every AppImage without its sandbox.
    toolsets: { appimage: '1.0.3' },
    appImage: { executableArgs: [] },
    linux: { target: ['dir', 'tar.gz', 'AppImage', 'deb'], category: 'Utility', icon: icons, executableName: 'trunnion', syncDesktopName: true },
    mac: { target: ['dmg'], category: 'public.app-category.productivity', icon: path.join(icons, '512x512.png'), hardenedRuntime: true, gatekeeperAssess: false, notarize: false },
    win: { target: ['nsis'], icon: path.join(icons, '512x512.png') },
    nsis: { oneClick: false, perMachine: false, deleteAppDataOnUninstall: false },
  };
}
