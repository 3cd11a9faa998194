/** The entry of a thread that works on tasks. */
import { type Problem, SiteError } from '../../model/index.ts';
import { type Answer, TASKS, type TaskInputs, type TaskName } from './tasks.ts';

export interface Job<Name extends TaskName = TaskName> {
  readonly name: Name;
  readonly input: TaskInputs[Name];
}

/** Errors lose their class and fields on the way between threads: problems travel as data. */
export type Outcome = { readonly answer: Answer } | { readonly problems: readonly Problem[] };

export default async function work<Name extends TaskName>({ name, input }: Job<Name>): Promise<Outcome> {
  try {
    return { answer: await TASKS[name](input, () => false) };
  } catch (error) {
    if (error instanceof SiteError) return { problems: error.problems };
    throw error;
  }
}
