import { describe, expect, it } from 'vitest';
import { runOnText } from './command-room.ts';

async function schedule(input: unknown, ...args: string[]) {
  const { exit, out, error } = await runOnText(
    'schedule',
    typeof input === 'string' ? input : JSON.stringify(input),
    ...args,
  );
  const read = (text: string): unknown => (text === '' ? undefined : JSON.parse(text));
  return { exit, out: read(out), error: read(error) };
}

const job = (id: string, more: Record<string, unknown> = {}) => ({ id, duration: 2, uses: { R1: 1 }, ...more });

describe('schedule', () => {
  it('answers in JSON, in the order asked, with earlier jobs named before or after', async () => {
    const jobs = [job('2', { after: ['1'] }), job('1', { duration: 3 }), { id: '3', duration: 0, after: ['2'] }];
    // By hand: 1 takes 0 to 3, 2 takes 3 to 5, 3 has no length.
    expect(await schedule({ resources: { R1: 12 }, jobs }, '--json')).toEqual({
      exit: 0,
      out: {
        makespan: 5,
        jobs: [
          { id: '2', start: 3, finish: 5 },
          { id: '1', start: 0, finish: 3 },
          { id: '3', start: 5, finish: 5 },
        ],
      },
      error: undefined,
    });
  });

  it('takes lags, and ids that are numbers', async () => {
    const jobs = [
      { id: 1, duration: 3 },
      { id: 2, duration: 1, after: [{ id: 1, lag: 4 }] },
    ];
    expect((await schedule({ jobs })).out).toMatchObject({ makespan: 8 });
  });

  it('answers an empty list', async () => {
    expect((await schedule({ resources: {}, jobs: [] })).out).toEqual({ makespan: 0, jobs: [] });
  });

  it.each([
    ['an unknown earlier job', { jobs: [job('1', { after: ['9'] })] }, 'after'],
    ['a ring', { jobs: [job('1', { after: ['2'] }), job('2', { after: ['1'] })] }, 'after'],
    ['use above what there is', { jobs: [job('1', { uses: { R1: 9 } })] }, 'uses'],
    ['an unknown resource', { jobs: [job('1', { uses: { R2: 1 } })] }, 'uses'],
    ['a negative duration', { jobs: [job('1', { duration: -1 })] }, 'duration'],
    ['a fractional duration', { jobs: [job('1', { duration: 1.5 })] }, 'duration'],
    ['no duration', { jobs: [{ id: '1' }] }, 'duration'],
    ['an id used twice', { jobs: [job('1'), job('1')] }, 'id'],
    ['an id of nothing', { jobs: [job('')] }, 'id'],
    ['a negative lag', { jobs: [job('1'), job('2', { after: [{ id: '1', lag: -1 }] })] }, 'lag'],
    ['a field it does not know', { jobs: [job('1', { color: 'red' })] }, 'color'],
    ['a negative resource', { resources: { R1: -1 }, jobs: [] }, 'resources'],
    ['a list that is none', { jobs: { id: '1' } }, 'jobs'],
    ['a job that is none', { jobs: [null] }, 'jobs'],
    ['a job that waits for itself', { jobs: [job('1', { after: ['1'] })] }, 'after'],
    ['earlier jobs that are no list', { jobs: [job('1', { after: '2' })] }, 'after'],
    ['a duration that is text', { jobs: [job('1', { duration: '3' })] }, 'duration'],
    ['a number and a text that are one id', { jobs: [job('1'), { ...job('1'), id: 1 }] }, 'id'],
    ['an id that is no whole number', { jobs: [{ ...job('1'), id: 1.5 }] }, 'id'],
    ['a fractional use', { jobs: [job('1', { uses: { R1: 0.5 } })] }, 'uses'],
    ['uses that are a list', { jobs: [job('1', { uses: ['R1'] })] }, 'uses'],
    ['resources that are a list', { resources: [2], jobs: [] }, 'resources'],
    ['a field of the whole that it does not know', { jobs: [], title: 'x' }, 'title'],
  ])('refuses %s in JSON, naming the field', async (_, input, field) => {
    const { exit, out, error } = await schedule({ resources: { R1: 2 }, ...input });
    expect(exit).toBe(2);
    expect(out).toBeUndefined();
    expect(error).toMatchObject({
      code: 'bad-input',
      field,
      accepted: expect.any(String) as string,
      message: expect.stringContaining('Nothing was changed.') as string,
    });
  });

  it('names the resource whose amount can’t be read, and the path of a ring', async () => {
    const text = await schedule({ resources: { lift: '1' }, jobs: [] });
    expect(text.error).toMatchObject({
      message: 'The amount of “lift” in the resources of the list of jobs can\'t be "1". Nothing was changed.',
    });
    const jobs = [job('a', { after: ['c'] }), job('b', { after: ['a'] }), job('c', { after: ['b'] })];
    const ring = await schedule({ resources: { R1: 1 }, jobs });
    expect(ring.error).toMatchObject({ detail: { path: ['a', 'b', 'c', 'a'] } });
  });

  it('reads a text with a byte order mark and line ends of any kind', async () => {
    const text = '\uFEFF{"resources":{"R1":1},\r\n"jobs":[{"id":"a","duration":3}]}\r\n';
    expect(await schedule(text)).toMatchObject({ exit: 0, out: { makespan: 3 } });
  });

  it('places ten thousand jobs', async () => {
    // By hand: each waits for the one before it, so that they take the sum of their times.
    const jobs = Array.from({ length: 10_000 }, (_, at) => job(String(at + 1), { after: at === 0 ? [] : [at] }));
    expect((await schedule({ resources: { R1: 1 }, jobs })).out).toMatchObject({ makespan: 20_000 });
  });

  it('takes job 0 as the beginning where none is listed', async () => {
    // 3 and then 2 after a lag of 4 from the beginning, or after the 3: 0–3, 4–6 on two hands, by hand.
    const jobs = [job('1', { duration: 3, after: ['0'] }), job('2', { duration: 2, after: [{ id: '0', lag: 4 }] })];
    const { exit, out } = await schedule({ resources: { R1: 2 }, jobs });
    expect(exit).toBe(0);
    expect(out).toMatchObject({ makespan: 6 });
  });

  it.each(['{"jobs":', '', '[]', '{}', '{"jobs":null}'])('tells what it wants for %j', async (text) => {
    expect(await schedule(text)).toMatchObject({ exit: 2, out: undefined, error: { code: 'usage' } });
  });

  it('counts one thing as one, and says how long a time may be', async () => {
    const one = await schedule({ resources: { lift: 1 }, jobs: [{ id: 'a', duration: 1, uses: { lift: 2 } }] });
    expect(one.error).toMatchObject({ message: 'Job “a” uses 2 of “lift”; there is 1. Nothing was changed.' });
    const long = await schedule({ jobs: [{ id: 'a', duration: 1e15 }] });
    expect(long).toMatchObject({ exit: 2, error: { accepted: 'a whole number from 0 to 1000000000000' } });
  });
});
