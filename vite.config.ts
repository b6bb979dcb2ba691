import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'web',
  plugins: [react()],
  // The page's policy allows no inline script, style or data but images; everything is a file of our own.
  build: { outDir: '../dist/web', emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022' },
  worker: { format: 'es' },
});
