import type { TokenRecord } from '../access/tokens.ts';
import { BadInput } from '../bad-input.ts';
import { type Command, printText, readArgs, seeHelp } from '../command.ts';
import { dataFolder } from '../settings.ts';
import { type Column, table } from '../terminal/table.ts';

const OPTIONS = { data: { type: 'string' }, name: { type: 'string' } } as const;

const LONGEST_NAME = 80;

const COLUMNS: readonly Column<TokenRecord>[] = [
  { head: 'number', text: ({ id }) => String(id) },
  { head: 'made', text: ({ createdAt }) => createdAt.slice(0, 10), align: 'left' },
  { head: 'revoked', text: ({ revokedAt }) => revokedAt?.slice(0, 10) ?? '', align: 'left' },
  { head: 'name', text: ({ name }) => name, align: 'left', shrinks: true },
];

/** `shadeside token`: the tokens that let others than this machine in. */
export const token: Command = {
  summary: 'makes, lists and revokes the tokens of a server',
  help: `shadeside token new [--name NAME] [--data DIR]
shadeside token list [--data DIR]
shadeside token revoke NUMBER [--data DIR]

A server that other machines reach asks for a token. "new" makes one and
prints it this once; "list" shows name and age of all, "revoke" ends one at
once, also where it is in use. The server may run meanwhile.

  --name      what the token is for, such as the team that gets it
  --data      the data folder of the server`,
  run: async (args) => {
    const { values, positionals } = readArgs('token', args, OPTIONS, 2);
    const [action, number] = positionals;
    if (action !== 'new' && action !== 'list' && action !== 'revoke') {
      throw new BadInput([`token: "${action ?? ''}" is no action: new, list or revoke; ${seeHelp('token')}`]);
    }
    if (number !== undefined && action !== 'revoke') {
      throw new BadInput([`token: "${number}" is one argument too many; ${seeHelp('token')}`]);
    }
    const id = action === 'revoke' ? readNumber(number) : 0;
    const name = readName(values.name);
    const [{ openStore, StoreError }, { openTokens }] = await Promise.all([
      import('../data/store.ts'),
      import('../access/tokens.ts'),
    ]);
    try {
      const store = openStore(dataFolder('token', values.data, process.env));
      try {
        const tokens = openTokens(store);
        if (action === 'new') printText(tokens.make(name));
        else if (action === 'list') printText(table(tokens.list(), COLUMNS));
        else if (!tokens.revoke(id)) throw new BadInput([`token: there is no token ${id} to revoke; see token list`]);
        return 0;
      } finally {
        store.close();
      }
    } catch (error) {
      if (!(error instanceof StoreError)) throw error;
      process.stderr.write(`${error.message}\n`);
      return 1;
    }
  },
};

function readNumber(text: string | undefined): number {
  if (text !== undefined && /^\d{1,9}$/.test(text)) return Number(text);
  throw new BadInput([`token: revoke ${text ?? ''}: the number of a token is needed; see token list`]);
}

function readName(text = 'unnamed'): string {
  const name = text.trim();
  if (name !== '' && name.length <= LONGEST_NAME) return name;
  throw new BadInput([`token: --name ${text}: allowed are 1 to ${LONGEST_NAME} characters`]);
}
