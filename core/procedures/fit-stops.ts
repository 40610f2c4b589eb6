import type { FitStop } from '../contract/fits.ts';
import type { JudgedConnection } from '../fit/kept/connection.ts';
import type { JudgedDeclared } from '../fit/kept/declared.ts';
import type { Connection } from '../workbook/store/connection.ts';
import { judgedFits } from '../workbook/store/fits.ts';

/** What stands against ordering some part lines: fits that stop them, and what is only to be said. */
interface OrderFits {
  readonly stops: readonly FitStop[];
  readonly notices: readonly string[];
}

const sideOf = ({ one, other }: JudgedConnection, part: number) =>
  one.part === part ? one : other.part === part ? other : undefined;

const howToTellDeclared = 'Measure both and compare with what was entered.';

function stopOf(judged: JudgedConnection, part: number, description: string): FitStop {
  const { connection, fit, says } = judged;
  return {
    part,
    description,
    subject: { kind: 'connection', id: connection.id },
    title: connection.title,
    verdict: fit.verdict,
    says,
    consequence: fit.consequence,
    howToTell: fit.howToTell || 'Measure diameter and pitch of both before anything is bought.',
    caution: fit.caution,
  };
}

const declaredStop = (judged: JudgedDeclared, part: number, description: string): FitStop => ({
  part,
  description,
  subject: { kind: 'declared-fit', id: judged.fit.id },
  title: judged.fit.title,
  verdict: judged.outcome,
  says: judged.says,
  consequence: '',
  howToTell: howToTellDeclared,
  caution: judged.caution,
});

const grave = (judged: JudgedDeclared): boolean => judged.severity === 'danger' || judged.severity === 'stop';

/**
 * Judges the fits of part lines that are about to be ordered. A look-alike, ports that don't join, and a declared fit
 * that fails dangerously stop them; what isn't known, or still wants its adapter, is only said.
 */
export function fitsAgainstOrder(connection: Connection, build: number, parts: readonly number[]): OrderFits {
  const wanted = [...new Set(parts)];
  const { judged, judgedDeclared, context } = judgedFits(connection, build, undefined);
  const named = (part: number): string => context.parts.get(part)?.description ?? `part line ${part}`;
  const stops: FitStop[] = [];
  const notices: string[] = [];
  for (const part of wanted) {
    for (const one of judged) {
      if (one.stands === 'fits' || sideOf(one, part) === undefined) continue;
      if (one.stands === 'wrong' && (one.fit.verdict === 'lookalike' || one.fit.verdict === 'no')) {
        stops.push(stopOf(one, part, named(part)));
      } else notices.push(`“${named(part)}”, ${one.connection.title}: ${one.says}`);
    }
    for (const one of judgedDeclared) {
      if (one.stands === 'fits' || !Object.values(one.fit.things).includes(part)) continue;
      if (one.stands === 'wrong' && grave(one)) stops.push(declaredStop(one, part, named(part)));
      else notices.push(`“${named(part)}”, ${one.fit.title}: ${one.says}`);
    }
  }
  return { stops, notices: [...new Set(notices)] };
}

/** A stop in a sentence, for a notice. */
export const stopText = ({ description, title, says }: FitStop): string => `“${description}”, ${title}: ${says}`;
