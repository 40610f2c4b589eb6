import { describe, expect, it } from 'vitest';
import { type FitOptions, fit as judge } from '../../../core/fit/fit.ts';
import { checkCases } from './check-cases.ts';
import { portOf } from './port-of.ts';

const judgeText = (one: string, other: string, options: FitOptions = {}) =>
  judge(portOf(one, options.role), portOf(other, options.role), options);

const verdictOf = (one: string, other: string, options: FitOptions = {}) => judgeText(one, other, options).verdict;

describe('whether two ports join', () => {
  // Each row carries its source.
  it.each(checkCases)('%s: %s with %s (%s) is %s', (_, one, other, role, verdict) => {
    const there = judgeText(one, other, { role });
    const back = judgeText(other, one, { role });
    expect([there.verdict, back.verdict]).toEqual([verdict, verdict]);
    expect(there.reason).not.toBe('');
    expect(there.source).not.toBe('');
    if (verdict === 'adapter') expect(there.adapters.length).toBeGreaterThan(0);
    if (verdict === 'lookalike') {
      expect(there).toMatchObject({ consequence: expect.any(String), howToTell: expect.any(String) });
    }
  });

  // Source: rules of this program. Rc, Rp, banjo, barb, tube and hose say their gender themselves.
  it.each(
    checkCases.flatMap(([id, one, other, role]) =>
      [
        [id, one.replace(/ (fe)?male/, ''), other, role] as const,
        [id, one, other.replace(/ (fe)?male/, ''), role] as const,
      ].filter(([, first, second]) => (first !== one || second !== other) && !/^R[cp] \S+$/.test(second)),
    ),
  )('%s without one gender: %s with %s (%s) asks for it', (_, one, other, role) => {
    const found = judgeText(one, other, { role });
    expect(found.verdict).toBe('unknown');
    expect(found.missing.join()).toContain('male or female');
  });

  it('raises what can burn somebody', () => {
    expect(judgeText('JIC -8 male', 'SAE45 -8 female').severity).toBe('danger');
    expect(judgeText('JIC -8 male', 'SAE45 -8 female', { medium: 'fuel' }).severity).toBe('stop');
    expect(judgeText('R 1/4 male', 'G 1/4 female').severity).toBe('caution');
    expect(judgeText('R 1/4 male', 'G 1/4 female', { medium: 'brake fluid' }).severity).toBe('danger');
    expect(judgeText('R 1/4 male', 'G 1/4 female', { medium: 'oil drain' }).severity).toBe('caution');
    expect(judgeText('R 1/4 male', 'G 1/4 female', { role: 'gas', pressureBar: 11 }).severity).toBe('danger');
    expect(judgeText('R 1/4 male', 'G 1/4 female', { role: 'gas', pressureBar: 3 }).severity).toBe('caution');
  });

  it('takes an O-ring stud in an O-ring port, and a V-band of one stated profile', () => {
    expect(verdictOf('ISO6149 M14x1.5 male', 'ISO6149 M14x1.5 female')).toBe('mates');
    expect(verdictOf('V-band 3 in profile p1', 'V-band 76.2 mm profile p1')).toBe('mates');
  });

  it.each(['AN8', '-8AN', 'an-08', '37° -8'])('does not care how D15 is written: %s', (text) => {
    expect(verdictOf(`${text} male`, 'JIC -8 female')).toBe('mates');
  });

  it('asks for the family and the key of a connector, never assuming them', () => {
    const found = judgeText('elec 6 male', 'elec 6 female family x key a');
    expect(found.verdict).toBe('unknown');
    expect(found.missing).toHaveLength(2);
    expect(verdictOf('elec 6 male', 'elec 4 female')).toBe('no');
  });

  it('turns a rectangle, and a square into its hole circle', () => {
    expect(verdictOf('pattern 4xM8 66x50', 'pattern 4xM8 50x66')).toBe('mates');
    // Diagonal of a square of 50 mm: 50 x sqrt 2 = 70.71, geometry.
    expect(verdictOf('pattern 4xM8 50x50', 'pattern 4xM8 pcd 70.7')).toBe('mates');
    expect(verdictOf('pattern 4xM8 66x50', 'pattern 4xM8 70x50')).toBe('no');
    expect(verdictOf('pattern 2xM8 66x50', 'pattern 2xM8 pcd 75')).toBe('unknown');
    expect(verdictOf('pattern 4xM8 pcd 75', 'pattern 4xM10 pcd 75')).toBe('no');
  });

  it('keeps different things apart', () => {
    expect(verdictOf('M8 male', 'elec 6 female')).toBe('no');
    expect(verdictOf('slip 63.5 od', 'slip 64 id')).toBe('mates');
    expect(verdictOf('slip 63.5 od', 'slip 66 id')).toBe('adapter');
    expect(verdictOf('M8 male', 'M8 male', { role: 'fastener' })).toBe('no');
    expect(verdictOf('M8 male', 'M8 female', { role: 'fastener' })).toBe('mates');
  });

  it('names what the joint needs', () => {
    // O-ring number: SAE J1926-1 (public tables agree); its size AS568, from memory. Washers: DIN 7603, from memory.
    expect(judgeText('ORB -10 male', 'ORB -10 female').needs).toEqual(['O-ring 910 (19.18 x 2.46 mm)']);
    expect(judgeText('banjo M12x1.5', 'M12x1.5 female').needs).toEqual(['two sealing washers 12x15.5 mm']);
    expect(judgeText('M14x1.5 male', 'M14x1.5 female').needs).toEqual([
      'sealing washer 14x18 mm or O-ring under the shoulder',
    ]);
    expect(judgeText('1/8 NPT male', '1/8 NPTF female').needs).toEqual(['thread sealant']);
    expect(judgeText('JIC -6 male', 'AN -6 female').needs).toEqual([]);
  });
});
