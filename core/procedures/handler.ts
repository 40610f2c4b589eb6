import { ORPCError, ValidationError } from '@orpc/server';
import type { z } from 'zod';
import type { RefusalData } from '../contract/common.ts';
import { Refusal } from '../refusal.ts';
import { refusalData, refused } from './context.ts';

/** What is wrong with an input, in the one shape: the first field, what is accepted, and that nothing was changed. */
export function inputRefusal(issues: readonly z.core.$ZodIssue[]): RefusalData {
  const [issue] = issues;
  const field = issue?.path.map(String).join('.') ?? '';
  const message = issue?.message ?? 'The request could not be read.';
  return {
    code: 'bad-input',
    message: `${field === '' ? '' : `${field}: `}${message.replace(/\.?$/, '.')} Nothing was changed.`,
    field,
    accepted: message,
    detail: {
      problems: issues.slice(0, 20).map(({ path, message: text }) => `${path.map(String).join('.')}: ${text}`),
    },
  };
}

const noSpace = new Set(['SQLITE_FULL', 'SQLITE_IOERR_WRITE']);

/** Every error that leaves a procedure: a refusal with its data, or an error that says nothing about our insides. */
export function asAnswer(error: unknown, log: (line: string) => void): ORPCError<string, unknown> {
  if (error instanceof Refusal) return refused(refusalData(error));
  if (error instanceof ORPCError) {
    if (error.code === 'BAD_REQUEST' && error.cause instanceof ValidationError) {
      return refused(inputRefusal(error.cause.issues as z.core.$ZodIssue[]));
    }
    if (error.code !== 'INTERNAL_SERVER_ERROR') return error as ORPCError<string, unknown>;
  }
  const code = (error as { code?: unknown } | null)?.code;
  if (typeof code === 'string' && noSpace.has(code)) {
    return refused({
      code: 'disk-full',
      message: 'The disk is full. Nothing was changed; make room and try again.',
      detail: {},
    });
  }
  if (code === 'SQLITE_BUSY') {
    return refused({
      code: 'open-elsewhere',
      message: 'Another program is writing to this workbook. Nothing was changed; try again.',
      detail: {},
    });
  }
  const id = Math.random().toString(36).slice(2, 10);
  log(`error ${id}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return new ORPCError('INTERNAL_SERVER_ERROR', {
    message: `Something went wrong inside the program (error ${id}). Nothing was changed.`,
  });
}

/** Interceptor for the wire and for calls in the same process alike. */
export const answering =
  (log: (line: string) => void) =>
  <Answer extends PromiseLike<unknown>>(options: { next(): Answer }): Answer =>
    options.next().then(undefined, (error: unknown) => {
      throw asAnswer(error, log);
    }) as unknown as Answer;
