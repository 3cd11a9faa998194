/** Statements about physics that are only made where their condition holds on the day's own numbers. */
import type { UnitSystem } from '../units.ts';
import { type BothUnits, bothUnits } from './both-units.ts';

export interface Rule<Subject> {
  readonly id: string;
  /** When it is said, in words. */
  readonly condition: string;
  /** Whether its claim follows wherever its condition holds, or is an observation of this place, climate and day. */
  readonly where: 'everywhere' | 'here';
  holds(subject: Subject): boolean;
  text(subject: Subject, units: UnitSystem): string;
}

/** A statement that holds on a computed day. */
export interface Statement {
  readonly id: string;
  readonly text: BothUnits;
  readonly condition: string;
  readonly where: Rule<never>['where'];
}

/** The statements of some rules that hold. */
export function statementsOf<Subject>(rules: readonly Rule<Subject>[], subject: Subject): Statement[] {
  return rules
    .filter((rule) => rule.holds(subject))
    .map((rule) => ({
      id: rule.id,
      condition: rule.condition,
      where: rule.where,
      text: bothUnits((units) => rule.text(subject, units)),
    }));
}
