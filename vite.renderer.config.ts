import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  build: { target: 'chrome140', outDir: '../dist/renderer', emptyOutDir: true },
});
