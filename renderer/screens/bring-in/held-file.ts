import { api, refusalOf } from '../../app/client.ts';
import type { Draft } from './draft.ts';

/**
 * Does something with the file that the program holds. It lets go of a file when it stops or when newer ones came; the
 * file is still at hand here, so it is sent once more and the work done again.
 */
export async function withHeldFile<Value>(draft: Draft, work: () => Promise<Value>): Promise<Value> {
  try {
    return await work();
  } catch (error) {
    const { code, field } = refusalOf(error);
    if (code !== 'not-found' || field !== 'token') throw error;
    await api.exchange.read({ file: draft.file, ...(draft.encoding === null ? {} : { encoding: draft.encoding }) });
    return work();
  }
}
