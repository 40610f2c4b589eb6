import { defineConfig } from 'drizzle-kit';

/** Paths are read from the project's root, where `npm run migrations` is started. */
export default defineConfig({ dialect: 'sqlite', schema: './core/workbook/schema/index.ts', out: './migrations' });
