import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { refitJsonSchema } from './schema.ts';

const FILE = new URL('../../docs/refit.schema.json', import.meta.url);

test('frozen: docs/refit.schema.json is the schema that is used; WRITE_SCHEMA=1 writes it', () => {
  const text = `${JSON.stringify(refitJsonSchema(), null, 2)}\n`;
  if (process.env.WRITE_SCHEMA === '1') writeFileSync(FILE, text);
  expect(existsSync(FILE) && readFileSync(FILE, 'utf8')).toBe(text);
});
