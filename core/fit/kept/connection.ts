/** A kept connection judged: verdict, sentence, and whether anything is still wrong after adapter and acceptance. */
import { itemKey } from '../../plumbing/bill.ts';
import { type JudgedFit, joinedFit, unjudged } from './joined.ts';
import {
  type AcceptanceShown,
  acceptanceOf,
  type FitContext,
  type KeptConnection,
  type Stands,
  shownAcceptance,
} from './records.ts';
import { readSide, type SideShown } from './sides.ts';

export interface JudgedConnection {
  readonly connection: KeptConnection;
  readonly one: SideShown;
  readonly other: SideShown;
  readonly fit: JudgedFit;
  readonly says: string;
  readonly stands: Stands;
  /** A few words: "look-alike", "does not fit". */
  readonly standing: string;
  readonly adapter: { pieces: string[]; parts: number[]; missing: boolean } | null;
  /** Part lines for the loose things of a connection that mates; it is kept as a choice of no pieces. */
  readonly needsListed: { parts: number[]; missing: boolean } | null;
  readonly accepted: AcceptanceShown | null;
  /** The texts that an acceptance made now would be for. */
  readonly acceptFor: string;
}

const unknownCaution = 'Until both sides are known, don’t force or fill the joint: follow the makers’ manuals.';

const isJoinedBy = (fit: JudgedFit, pieces: readonly string[]): boolean => {
  const wanted = pieces.map(itemKey).join('\n');
  return fit.adapters.some((one) => one.pieces.map((text) => itemKey(text.slice(0, 200))).join('\n') === wanted);
};

/** Without its full stop, so that it can be followed by more. */
const clause = (text: string): string => text.trim().replace(/\.+$/, '');

/** A consequence without the opening that its reason has said already. */
const newIn = (consequence: string, reason: string): string =>
  reason.toLowerCase().includes('same diameter') ? consequence.replace(/^Same diameter[.,;:]\s*/, '') : consequence;

const opening: Readonly<Record<JudgedFit['verdict'], string>> = {
  mates: 'Mates',
  adapter: 'Joins only with an adapter',
  lookalike: 'Look-alike, does not join',
  no: 'Does not join',
  unknown: 'Not known',
};

/** One sentence: verdict, reason, and what follows from it. */
export function fitSays(fit: JudgedFit): string {
  const follows =
    fit.verdict === 'mates'
      ? fit.needs.length === 0
        ? ''
        : `; also needed: ${fit.needs.join(', ')}`
      : fit.verdict === 'no'
        ? '; assembled all the same it leaks or lets go, and no usual adapter joins it'
        : fit.consequence === ''
          ? ''
          : `; ${clause(newIn(fit.consequence, fit.reason))}`;
  return `${opening[fit.verdict]}: ${clause(fit.reason)}${follows}.`;
}

/** Whether two sides join, kept or typed. */
export function judgeSides(
  sides: Pick<KeptConnection, 'one' | 'other' | 'role' | 'medium' | 'pressureBar'>,
  context: FitContext,
): { readonly one: SideShown; readonly other: SideShown; readonly fit: JudgedFit; readonly turned: () => JudgedFit } {
  const one = readSide(sides.one, sides.role, context);
  const other = readSide(sides.other, sides.role, context);
  const lacks = [one.lacks, other.lacks].filter((text) => text !== '');
  if (lacks.length > 0 || one.port === undefined || other.port === undefined) {
    const fit = unjudged(lacks, unknownCaution);
    return { one: one.shown, other: other.shown, fit, turned: () => fit };
  }
  const [first, second] = [one.port, other.port];
  return {
    one: one.shown,
    other: other.shown,
    fit: joinedFit(first, second, sides),
    // Asked only of a connection with an adapter, which stays chosen when the sides are named the other way round.
    turned: () => joinedFit(second, first, sides),
  };
}

/** Judges a connection as it stands. */
export function judgeConnection(connection: KeptConnection, context: FitContext): JudgedConnection {
  const { one, other, fit, turned } = judgeSides(connection, context);
  const acceptFor = acceptanceOf([one.text, other.text]);
  const accepted = shownAcceptance(connection.accepted, acceptFor);
  const { adapter: chosen } = connection;
  const offList = (part: number): boolean => context.parts.get(part)?.listed !== true;
  const needsListed =
    chosen === null || chosen.pieces.length > 0 || fit.verdict !== 'mates'
      ? null
      : {
          parts: [...new Set(chosen.parts)],
          missing: chosen.parts.length !== fit.needs.length || chosen.parts.some(offList),
        };
  const adapter =
    chosen === null || chosen.pieces.length === 0
      ? null
      : {
          pieces: [...chosen.pieces],
          parts: [...new Set(chosen.parts)],
          missing:
            chosen.parts.some(offList) ||
            (fit.verdict !== 'unknown' && !isJoinedBy(fit, chosen.pieces) && !isJoinedBy(turned(), chosen.pieces)),
        };
  const settled = (adapter !== null && !adapter.missing) || (accepted !== null && !accepted.lapsed);
  const stands: Stands = fit.verdict === 'unknown' ? 'unknown' : fit.verdict === 'mates' || settled ? 'fits' : 'wrong';
  return {
    connection,
    one,
    other,
    fit,
    says: fitSays(fit),
    stands,
    standing: standingOf(fit, adapter),
    adapter,
    needsListed,
    accepted,
    acceptFor,
  };
}

function standingOf({ verdict, missing }: JudgedFit, adapter: JudgedConnection['adapter']): string {
  if (verdict === 'mates') return 'mates';
  if (verdict === 'lookalike') return 'look-alike';
  if (verdict === 'no') return 'does not join';
  if (verdict === 'unknown') return missing[0] === undefined ? 'not known' : 'something is not known';
  return adapter === null ? 'adapter not chosen' : adapter.missing ? 'adapter missing' : 'with an adapter';
}

const verdictRank = ['lookalike', 'no', 'unknown', 'adapter', 'mates'] as const;
const severityRank = ['stop', 'danger', 'caution', 'info'] as const;

/** The worst first: what is still wrong, then by verdict and by harm; what was settled comes after. */
export function worstFirst(one: JudgedConnection, other: JudgedConnection): number {
  const rank = ({ stands, fit, connection }: JudgedConnection): readonly number[] => [
    stands === 'fits' ? 1 : 0,
    verdictRank.indexOf(fit.verdict),
    severityRank.indexOf(fit.severity),
    connection.id,
  ];
  const [first, second] = [rank(one), rank(other)];
  const at = first.findIndex((value, index) => value !== second[index]);
  return at < 0 ? 0 : (first[at] ?? 0) - (second[at] ?? 0);
}
