import type { Problem } from '../model/index.ts';

/** Thrown for what a person handed in wrongly on the command line; ends it with code 2, one line a problem. */
export class BadInput extends Error {
  readonly lines: readonly string[];

  constructor(lines: readonly string[]) {
    super(lines.join('\n'));
    this.name = 'BadInput';
    this.lines = lines;
  }

  /** The problems of one file, each line led by its name. */
  static inFile(name: string, problems: readonly Problem[]): BadInput {
    return new BadInput(problems.map((problem) => `${name}: ${problem.message}`));
  }
}
