/** Asks a server again and again, one request after the other, whether it is well. */
import { Agent, get } from 'node:http';

export interface HealthProbe {
  /** Ends the asking and gives back how long each good answer took, ms. */
  stop(): Promise<number[]>;
}

const PAUSE_MS = 20;

/** @throws from `stop`, when an answer was not 200 */
export function probeHealth(address: string): HealthProbe {
  // One connection that stays open: what is measured is the answer, not the connecting.
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  let going = true;
  const probing = (async () => {
    const timesMs: number[] = [];
    while (going) {
      const start = performance.now();
      await ask(`${address}api/health`, agent);
      timesMs.push(performance.now() - start);
      await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
    }
    agent.destroy();
    return timesMs;
  })();
  // It is awaited by `stop`; until then a failure is no unhandled one.
  probing.catch(() => {});
  return {
    stop: () => {
      going = false;
      return probing;
    },
  };
}

function ask(url: string, agent: Agent): Promise<void> {
  return new Promise((resolve, reject) => {
    get(url, { agent }, (response) => {
      response.resume();
      response.on('end', () => {
        if (response.statusCode === 200) resolve();
        else reject(new Error(`health answered ${response.statusCode}`));
      });
    }).on('error', reject);
  });
}
