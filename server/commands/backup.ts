import { resolve } from 'node:path';
import { BadInput } from '../bad-input.ts';
import { type Command, printText, readArgs, seeHelp } from '../command.ts';
import type { CopyCounts } from '../data/backup.ts';
import { DEFAULT_DATA } from '../settings.ts';

/** `shadeside backup`: a copy of what a server keeps. */
export const backup: Command = {
  summary: 'copies what a server keeps, while it works or not',
  help: `shadeside backup FOLDER [--data DIR]

Copies sites with all their revisions, screenings, tokens and weather files of
a data folder to FOLDER, which must not exist yet. A server may go on working
meanwhile. A screening that is not finished begins again from its table where
the copy is restored.

  --data      the data folder; SHADESIDE_DATA or ${DEFAULT_DATA} when left out`,
  run: async (args) => {
    const { values, positionals } = readArgs('backup', args, { data: { type: 'string' } }, 1);
    const target = resolve(folderOf('backup', positionals));
    return saying(async () => {
      const { backUp } = await import('../data/backup.ts');
      return `Copied ${contentsText(await backUp(dataDirOf(values.data), target))} to ${target}`;
    });
  },
};

/** `shadeside restore`: a data folder from such a copy. */
export const restore: Command = {
  summary: 'makes a data folder of a backup',
  help: `shadeside restore FOLDER [--data DIR] [--replace]

Makes a data folder of a backup. No server may be working in it.

  --data      the data folder; SHADESIDE_DATA or ${DEFAULT_DATA} when left out
  --replace   where that holds something, it is put aside under another name`,
  run: async (args) => {
    const options = { data: { type: 'string' }, replace: { type: 'boolean' } } as const;
    const { values, positionals } = readArgs('restore', args, options, 1);
    const from = resolve(folderOf('restore', positionals));
    return saying(async () => {
      const data = await import('../data/backup.ts');
      const dataDir = dataDirOf(values.data);
      const { formerly, ...counts } = await data.restore(from, dataDir, { replace: values.replace ?? false });
      const aside = formerly === null ? '' : `\nWhat was there before is in ${formerly}`;
      const tokens = 'Tokens are those of the copy; one that was revoked since is to be revoked again.';
      return `Restored ${contentsText(counts)} to ${dataDir}${aside}\n${tokens}`;
    });
  },
};

function folderOf(command: string, [folder]: readonly string[]): string {
  if (folder === undefined || folder.trim() === '')
    throw new BadInput([`${command}: a folder is needed; ${seeHelp(command)}`]);
  return folder;
}

function dataDirOf(option: string | undefined): string {
  return resolve(option ?? process.env['SHADESIDE_DATA'] ?? DEFAULT_DATA);
}

function contentsText({ sites, screenings }: CopyCounts): string {
  return `${sites} ${sites === 1 ? 'site' : 'sites'} and ${screenings} ${screenings === 1 ? 'screening' : 'screenings'}`;
}

/** Prints what came of it; a folder that cannot be used is told in a line, with exit code 1. */
async function saying(work: () => Promise<string>): Promise<number> {
  const { StoreError } = await import('../data/store.ts');
  try {
    printText(await work());
    return 0;
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    process.stderr.write(`${error.message}\n`);
    return 1;
  }
}
