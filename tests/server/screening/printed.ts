import { vi } from 'vitest';
import { main } from '../../../server/cli.ts';

/** Runs the command line in this process. */
export async function printed(args: string[]) {
  const said = { stdout: '', stderr: '' };
  const spies = (['stdout', 'stderr'] as const).map((name) =>
    vi.spyOn(process[name], 'write').mockImplementation((text) => {
      said[name] += text.toString();
      return true;
    }),
  );
  try {
    const code = await main(args, { webDir: 'none' });
    return { code, ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
