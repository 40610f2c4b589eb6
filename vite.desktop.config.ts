import { builtinModules } from 'node:module';
import { defineConfig } from 'vite';

/** Main is an ES module; a sandboxed preload must be CommonJS, so it is built in a mode of its own. */
export default defineConfig(({ mode }) => {
  const preload = mode === 'preload';
  return {
    build: {
      target: 'node24',
      ssr: preload ? 'electron/desktop/preload.ts' : 'electron/desktop/main.ts',
      outDir: 'dist/desktop',
      emptyOutDir: !preload,
      rolldownOptions: {
        external: ['electron', 'better-sqlite3', ...builtinModules, ...builtinModules.map((name) => `node:${name}`)],
        output: {
          format: preload ? 'cjs' : 'es',
          entryFileNames: preload ? 'preload.cjs' : 'main.js',
          codeSplitting: false,
        },
      },
    },
    ssr: { noExternal: true },
  };
});
