import { parsePort } from '../../../core/fit/parse.ts';
import type { Port, PortRole } from '../../../core/fit/port.ts';

/** The port in this text. @throws Error when it can't be read. */
export function portOf(text: string, role: PortRole = 'fluid'): Port {
  const read = parsePort(text, { role });
  if (!read.ok) throw new Error(`${text}: ${read.message}`);
  return read.port;
}
