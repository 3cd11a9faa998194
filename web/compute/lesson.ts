/** What the page and the worker of the lessons say to each other. */
import type {
  Answer,
  Comparison,
  Difference,
  DifferenceKind,
  Handout,
  Lesson,
  LessonComparison,
  LessonQuestion,
  Problem,
  Site,
  UnitSystem,
} from '../../model/index.ts';

/** A difference that a person may choose, with its words. */
export interface Choice {
  readonly difference: Difference;
  readonly words: string;
}

export interface ChoiceOfKind {
  readonly kind: DifferenceKind;
  readonly label: string;
  readonly choices: readonly Choice[];
}

/** Each task with what it is given and what it gives back. */
export interface LessonTasks {
  shipped: { readonly input: null; readonly result: readonly Lesson[] };
  /** The text of a lesson file; nothing about it is trusted. */
  open: { readonly input: string; readonly result: Lesson };
  /** A site as it stands in the form of the site view. */
  site: { readonly input: unknown; readonly result: Site };
  choices: {
    readonly input: { readonly site: Site; readonly wallName: string; readonly units: UnitSystem };
    readonly result: readonly ChoiceOfKind[];
  };
  answer: {
    readonly input: { readonly lesson: Lesson; readonly question: LessonQuestion };
    readonly result: Answer;
  };
  compareLesson: {
    readonly input: { readonly lesson: Lesson; readonly comparison: LessonComparison };
    readonly result: Comparison;
  };
  compareSite: {
    readonly input: { readonly site: Site; readonly wallName: string; readonly difference: Difference };
    readonly result: Comparison;
  };
  handout: {
    readonly input: { readonly lesson: Lesson; readonly units: UnitSystem };
    readonly result: Handout;
  };
}

export type LessonTask = keyof LessonTasks;

export type LessonRequest = {
  [Task in LessonTask]: { readonly id: number; readonly task: Task; readonly input: LessonTasks[Task]['input'] };
}[LessonTask];

export type LessonReply =
  | { readonly id: number; readonly kind: 'result'; readonly result: unknown }
  | { readonly id: number; readonly kind: 'problems'; readonly problems: readonly Problem[] }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
