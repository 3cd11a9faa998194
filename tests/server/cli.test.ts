/** The command line as a person or a script meets it: output, messages, exit codes. */
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import {
  CAUTIONS,
  DEMO_SITE,
  evaluateDay,
  parseSite,
  rankWalls,
  surenessSentence,
  touchText,
  USUAL_SITING_RULES,
} from '../../model/index.ts';
import packageFile from '../../package.json';
import { adviseOn } from '../../server/advice.ts';
import { runBuilt, spawnBuilt } from './run-built.ts';
import { FULL_BOX, SMALL_SITE } from './sites.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-cli-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Buffer): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const small = file('small.json', JSON.stringify(SMALL_SITE));

function overTheWire(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

/** Bad input: exit code 2, nothing on stdout, one line a problem. */
async function expectRefused(args: string[], lines: (string | RegExp)[], input?: string | Buffer): Promise<void> {
  const { code, stdout, stderr } = await runBuilt(args, input);
  const told = stderr.trimEnd().split('\n');
  expect(told).toHaveLength(lines.length);
  for (const [index, line] of lines.entries()) expect(told[index]).toMatch(line);
  expect(stdout).toBe('');
  expect(code).toBe(2);
}

describe('rank', () => {
  test('shows verdict, walls, reasons, assumptions and cautions in 80 columns', async () => {
    const { code, stdout, stderr } = await runBuilt(['rank', small]);
    const ranking = rankWalls(parseSite(SMALL_SITE), { units: 'metric' });
    const flowing = stdout.replace(/\s+/g, ' ');
    expect(flowing).toContain('Two walls 51.5° N, 0.1° W, 0 m; design day 2026-07-05, clock of Europe/London');
    for (const text of [ranking.decision, ...ranking.grounds]) expect(flowing).toContain(text);
    for (const wall of ranking.walls) expect(flowing).toContain(`${wall.rank} ${wall.name}: ${wall.reason}`);
    for (const { text } of ranking.assumptions) expect(flowing).toContain(text);
    for (const caution of CAUTIONS) expect(flowing).toContain(caution);
    expect(flowing).toMatch(
      new RegExp(
        `At wall "${ranking.walls[0]?.name}" on the design day: (heat index|air of) up to \\d+ °C in the shade`,
      ),
    );
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });

  test('checks without an entry are told as open', async () => {
    const { stdout } = await runBuilt(['rank', small]);
    expect(stdout).toMatch(/\d open/);
    expect(stdout).toContain('check on site:');
  });

  test('a company brings its own thresholds', async () => {
    const own = structuredClone(USUAL_SITING_RULES);
    Object.assign(own.checks.mountHeight, { hard: false });
    const high = file('high.json', JSON.stringify({ ...SMALL_SITE, box: { ...SMALL_SITE.box, mountHeightM: 2.2 } }));
    const best = async (args: string[]) => JSON.parse((await runBuilt(['rank', high, '--json', ...args])).stdout).best;
    expect(await best([])).toBeNull();
    const rules = file('rules.json', JSON.stringify(own));
    expect(await best(['--rules', rules])).not.toBeNull();
    const choices = async (args: string[]) =>
      JSON.parse((await runBuilt(['advise', high, '--json', '--samples', '1', ...args])).stdout).choice.walls;
    expect(await choices([])).toEqual([]);
    expect(await choices(['--rules', rules])).toHaveLength(2);
  });

  test('rules that are none are refused by their name', async () => {
    const bad = file('bad-rules.json', '{"name":"ours"}');
    await expectRefused(['rank', small, '--rules', bad], [/bad-rules\.json: rules\.checks: is missing/]);
    await expectRefused(['rank', small, '--rules', 'none.json'], [/^none\.json: there is no such file$/]);
  });

  test('where the lower limit is passed, the margin is the one to it', async () => {
    const site = {
      ...SMALL_SITE,
      climate: { designDay: { date: '2026-01-05', maxC: -15, dewPointC: -20 } },
      limits: { minC: -10, maxC: 65 },
    };
    const { stdout } = await runBuilt(['rank', '-'], JSON.stringify(site));
    const [wall] = rankWalls(parseSite(site)).walls;
    expect(stdout).toContain(` ${wall?.day.coldMarginK.toFixed(1)} K  `);
  });

  test('the built-in example stands in for a missing file, and says so', async () => {
    const { code, stdout, stderr } = await runBuilt(['rank']);
    expect(stderr).toBe(`No site file given: this is the built-in example, "${DEMO_SITE.title}".\n`);
    expect(stdout).toContain('°F');
    expect(code).toBe(0);
  });

  test('--units overrules the usual units of the place', async () => {
    const [metric, us] = await Promise.all([
      runBuilt(['rank', '--units', 'metric']),
      runBuilt(['rank', small, '--units=us']),
    ]);
    expect(metric.stdout).not.toMatch(/°F|\bft\b/);
    expect(us.stdout).not.toMatch(/°C|\d m\b/);
  });

  test('--json is the ranking and nothing else', async () => {
    const { code, stdout } = await runBuilt(['rank', small, '--json']);
    expect(JSON.parse(stdout)).toEqual(overTheWire(rankWalls(parseSite(SMALL_SITE), { units: 'metric' })));
    expect(code).toBe(0);
  });

  test('"-" reads standard input, in whichever encoding an editor or shell wrote it', async () => {
    const json = JSON.stringify({ ...SMALL_SITE, title: 'Zwei Wände' });
    const inputs = [json, `\ufeff${json}`, Buffer.from(`\ufeff${json}`, 'utf16le')];
    for (const input of inputs) {
      const { code, stdout } = await runBuilt(['rank', '-'], input);
      expect(stdout).toMatch(/^Zwei Wände\n/);
      expect(code).toBe(0);
    }
  });

  test('names that would steer the terminal do not reach it', async () => {
    const site = { ...SMALL_SITE, title: 'red \u001b[31m alarm \u202e', walls: [{ name: 'w\u009b1', azimuthDeg: 0 }] };
    const { stdout } = await runBuilt(['rank', '-'], JSON.stringify(site));
    for (const steering of ['\u001b', '\u009b', '\u202e']) expect(stdout).not.toContain(steering);
    expect(stdout).toContain('red �[31m alarm �');
  });

  test('a reader that has seen enough ends it quietly', async () => {
    const child = spawnBuilt(['day', '--wall', 'west', '--json']);
    let stderr = '';
    child.stderr.on('data', (chunk: Buffer) => {
      stderr += chunk.toString();
    });
    child.stdout.destroy();
    const code = await new Promise((resolve) => child.on('close', resolve));
    expect(stderr).not.toMatch(/EPIPE|Error/);
    expect(code).toBe(0);
  });
});

describe('day', () => {
  test('shows a line an hour, the peak, the balance and the closure', async () => {
    const { code, stdout } = await runBuilt(['day', small, '--wall', 'south']);
    const hours = stdout.split('\n').filter((line) => /^\d\d:00 /.test(line));
    expect(hours).toHaveLength(24);
    expect(hours[0]).toMatch(/^00:00/);
    expect(hours[23]).toMatch(/^23:00/);
    const flowing = stdout.replace(/\s+/g, ' ');
    const day = evaluateDay(parseSite(SMALL_SITE), 'south');
    expect(flowing).toContain(`Peak: ${day.peakInsideAirC.toFixed(1)} °C in the air inside the box at`);
    expect(flowing).toContain('15.0 W from the electronics');
    expect(flowing).toContain(`Touch: ${touchText(day.touch, 'metric')}`);
    expect(flowing).not.toContain('Also inside');
    expect(stdout).not.toMatch(/ back$/m);
    expect(flowing).toMatch(/Energy: .* less than 0\.001 %/);
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(code).toBe(0);
  });

  test('tells of battery, lower room, condensation and the back where the box has them', async () => {
    const stdout = (await runBuilt(['day', '-', '--wall', 'north'], JSON.stringify(FULL_BOX))).stdout;
    const day = evaluateDay(parseSite(FULL_BOX), 'north');
    const peak = (valuesC: number[] | null) => `${Math.max(...(valuesC ?? [])).toFixed(1)} °C`;
    const flowing = stdout.replace(/\s+/g, ' ');
    expect(flowing).toContain(
      `Also inside: the battery up to ${peak(day.batteryC)}, the air in the lower room up to ${peak(day.lowerAirC)}.`,
    );
    expect(day.condensationHours).toBeGreaterThan(0);
    expect(flowing).toContain(`Condensation: for ${day.condensationHours.toFixed(1)} h`);
    expect(stdout).toMatch(/ bottom {2}back$/m);
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
  });

  test('shows 23 hours on the day the clock goes forward and 25 when it goes back', async () => {
    for (const [date, count] of [
      ['2026-03-29', 23],
      ['2026-10-25', 25],
    ] as const) {
      const site = { ...SMALL_SITE, climate: { designDay: { date, maxC: 20, dewPointC: 5 } } };
      const { stdout } = await runBuilt(['day', '-', '--wall', 'north'], JSON.stringify(site));
      expect(stdout.match(/^\d\d:00 /gm)).toHaveLength(count);
    }
  });

  test('--json is the day and nothing else', async () => {
    const { stdout } = await runBuilt(['day', small, '--wall', 'south', '--json']);
    expect(JSON.parse(stdout)).toEqual(overTheWire(evaluateDay(parseSite(SMALL_SITE), 'south')));
  });

  test('--csv has a plain number in every cell of every step', async () => {
    const { stdout, stderr } = await runBuilt(['day', small, '--wall', 'south', '--csv']);
    expect(stderr).toMatch(/^Assumed:\n {2}\w+ .*design day/s);
    const [head = '', ...rows] = stdout.trimEnd().split('\n');
    const day = evaluateDay(parseSite(SMALL_SITE), 'south');
    expect(rows).toHaveLength(day.stepsUtc.length);
    const names = head.split(',');
    expect(names).toEqual(
      expect.arrayContaining(['timeUtc', 'timeLocal', 'insideAirC', 'skinFrontC', 'irradianceTopWm2']),
    );
    for (const [index, row] of rows.entries()) {
      const [utc = '', local, ...numbers] = row.split(',');
      expect(numbers).toHaveLength(names.length - 2);
      expect(new Date(utc)).toEqual(day.stepsUtc[index]);
      expect(local).toMatch(/^2026-07-05 \d\d:\d\d$/);
      for (const number of numbers) expect(number).toMatch(/^-?\d+\.\d+$/);
    }
    const inside = names.indexOf('insideAirC');
    const peak = Math.max(...rows.map((row) => Number(row.split(',')[inside])));
    expect(peak).toBeCloseTo(day.peakInsideAirC, 2);
  });

  test('--csv has battery and lower room only where the box has them, and all six faces', async () => {
    const heads = await Promise.all(
      [SMALL_SITE, FULL_BOX].map(async (site) => {
        const { stdout } = await runBuilt(['day', '-', '--wall', 'north', '--csv'], JSON.stringify(site));
        return stdout.split('\n')[0];
      }),
    );
    const start = 'timeUtc,timeLocal,outsideAirC,insideAirC,electronicsC,';
    const faces =
      'skinFrontC,skinLeftC,skinRightC,skinTopC,skinBottomC,skinBackC,irradianceFrontWm2,irradianceLeftWm2,' +
      'irradianceRightWm2,irradianceTopWm2,irradianceBottomWm2,irradianceBackWm2';
    expect(heads).toEqual([`${start}${faces}`, `${start}batteryC,lowerAirC,${faces}`]);
  });

  test('a wall is needed, and one of the site', async () => {
    await expectRefused(['day', small], [/--wall NAME is needed; walls of this site: north, south$/]);
    await expectRefused(['day', small, '--wall', 'carport'], [/small\.json: wall: .*"carport".*north, south$/]);
    await expectRefused(['day', small, '--wall'], [/^day: option '--wall <value>' argument missing/]);
  });

  test('--json and --csv exclude each other', async () => {
    await expectRefused(['day', small, '--wall', 'north', '--json', '--csv'], [/exclude each other/]);
  });
});

describe('advise', () => {
  const few = ['--samples', '12'];

  test('shows what helps, how sure it is, the cold night, touch, assumptions and cautions in 80 columns', async () => {
    const { code, stdout, stderr } = await runBuilt(['advise', small, '--wall', 'south', ...few]);
    const site = parseSite(SMALL_SITE);
    const { remedies, confidence, choice, touch } = await adviseOn(site, 'south', { samples: 12 });
    const ranking = rankWalls(site);
    const flowing = stdout.replace(/\s+/g, ' ');
    for (const { text, effort, caution } of remedies.remedies) {
      expect(flowing).toContain(text);
      expect(flowing).toContain(`(${effort.parts === 'none' ? 'no parts' : effort.parts})`);
      expect(flowing).toContain(caution);
    }
    expect(flowing).toContain(`The best two together: ${remedies.bestPair?.text}: gain +`);
    expect(flowing).toContain(`nine in ten below ${confidence.peakInsideAirC.p90.toFixed(1)} °C`);
    expect(flowing).toContain(confidence.weights[0]?.text);
    for (const { name, bestShare } of choice.walls)
      expect(flowing).toContain(`${name} ${Math.round(bestShare * 100)} %`);
    expect(flowing).toContain(surenessSentence(choice, ranking));
    for (const { assumption } of [remedies, confidence]) expect(flowing).toContain(`Assumed: ${assumption}`);
    expect(stdout).toMatch(/^ {2}running .* K {2}(yes|no)$/m);
    expect(stdout).toMatch(/^ {2}after an outage .* K {2}(yes|no)$/m);
    expect(flowing).toContain(touchText(touch, 'metric'));
    for (const { text } of ranking.assumptions) expect(flowing).toContain(text);
    for (const caution of CAUTIONS) expect(flowing).toContain(caution);
    for (const line of stdout.split('\n')) expect([...line].length).toBeLessThanOrEqual(80);
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });

  test('marks what is worse and what is not permitted, and says when no wall is', async () => {
    const marked = await runBuilt(['advise', '--wall', 'south', '--units', 'metric', ...few]);
    const remedies = marked.stdout.replace(/\s+/g, ' ');
    expect(remedies).toContain('NOT PERMITTED: wall "north" instead');
    expect(remedies).toMatch(/-\d+\.\d K \d+\.\d °C -\d+\.\d K no 2 h WORSE: wall "west" instead/);
    const walls = SMALL_SITE.walls.map((wall) => ({ ...wall, electrodeDistanceM: 40 }));
    const none = { ...SMALL_SITE, walls, constraints: { maxElectrodeDistanceM: 15 } };
    const { code, stdout } = await runBuilt(['advise', '-', ...few], JSON.stringify(none));
    expect(stdout).toContain('No wall is permitted');
    expect(code).toBe(0);
  });

  test('--json is the advice and nothing else; without --wall for the first of the ranking', async () => {
    const { code, stdout, stderr } = await runBuilt(['advise', small, '--json', '--samples', '3', '--seed', '9']);
    const site = parseSite(SMALL_SITE);
    const first = rankWalls(site).walls[0]?.name ?? '';
    expect(JSON.parse(stdout)).toEqual(overTheWire(await adviseOn(site, first, { samples: 3, seed: 9 })));
    expect(stderr).toBe('');
    expect(code).toBe(0);
  });

  test('--units are those of every figure, and "-" reads standard input', async () => {
    const { stdout } = await runBuilt(['advise', '-', '--units', 'us', ...few], JSON.stringify(SMALL_SITE));
    // The ranges of the inputs are told in kelvins, as they were set.
    expect(stdout.replace(/Assumed: 12 sets.*?no source\./s, '')).not.toMatch(/°C|\d m\b/);
  });

  test('a single set works and is called few', async () => {
    const { code, stdout } = await runBuilt(['advise', small, '--samples', '1']);
    expect(stdout.replace(/\s+/g, ' ')).toContain('Over 1 set of inputs');
    expect(stdout).toContain('So few sets say little.');
    expect(stdout).not.toContain('NaN');
    expect(code).toBe(0);
  });

  test('a wall must be one of the site', async () => {
    await expectRefused(['advise', small, '--wall', 'carport'], [/small\.json: wall: .*"carport".*north, south$/]);
  });
});

describe('bad input', () => {
  test('every problem of a site has its line with the field', async () => {
    const site = { ...SMALL_SITE, box: { ...SMALL_SITE.box, powerW: -3, colour: 'red' }, limits: { maxC: 'hot' } };
    const path = file('bad.json', JSON.stringify(site));
    for (const args of [
      ['rank', path],
      ['rank', path, '--json'],
      ['day', path, '--wall', 'north', '--csv'],
    ]) {
      const { code, stdout, stderr } = await runBuilt(args);
      const lines = stderr.trimEnd().split('\n');
      expect(lines).toHaveLength(3);
      for (const field of ['box.powerW', 'box.colour', 'limits.maxC']) {
        expect(lines.filter((line) => line.startsWith(`${path}: ${field}: `))).toHaveLength(1);
      }
      expect(stdout).toBe('');
      expect(code).toBe(2);
    }
  });

  test('what only the computation finds is told the same way', async () => {
    const skipped = {
      ...SMALL_SITE,
      place: { latitudeDeg: -13.8, longitudeDeg: -171.8, timeZone: 'Pacific/Apia' },
      climate: { designDay: { date: '2011-12-30', maxC: 30 } },
    };
    const path = file('skipped-date.json', JSON.stringify(skipped));
    await expectRefused(['rank', path], [/skipped-date\.json: climate.*: the date 2011-12-30 does not exist/]);
    await expectRefused(['day', path, '--wall', 'north'], [/skipped-date\.json: climate.*: the date 2011-12-30/]);
  });

  test('files that cannot be a site are told apart', async () => {
    await expectRefused(['rank', join(folder, 'none.json')], [/none\.json: there is no such file$/]);
    await expectRefused(['rank', join(small, 'below.json')], [/not a folder$/]);
    await expectRefused(['rank', folder], [/this is a folder, a file is needed$/]);
    await expectRefused(['rank', file('empty.json', ' \n')], [/empty\.json: empty; a site in JSON is needed$/]);
    await expectRefused(['rank', file('latin1.json', Buffer.from([0x22, 0xe4, 0x22]))], [/not text in UTF-8$/]);
    await expectRefused(['rank', file('list.json', '[]')], [/list\.json: site: /]);
    await expectRefused(['rank', '-'], [/^standard input: empty/]);
    await expectRefused(['rank', file('large.json', Buffer.alloc(9 * 1024 * 1024, 32))], [/larger than 8 MiB/]);
  });

  // Root may read whatever it is forbidden.
  test.skipIf(process.getuid?.() === 0)('a file that may not be read is told', async () => {
    const path = file('locked.json', '{}');
    chmodSync(path, 0);
    await expectRefused(['rank', path], [/no permission to read this file$/]);
  });

  test('broken JSON is told with line and column', async () => {
    await expectRefused(['rank', '-'], [/^standard input: no valid JSON at line 3, column 2: /], '{\n "a": 1,\n b\n}');
    await expectRefused(['rank', '-'], [/^standard input: no valid JSON at line 2, column 1: .*end/], '{"place":\n');
  });

  test('a problem stays one line whatever stands in the file', async () => {
    await expectRefused(
      ['rank', '-'],
      [/constraints\.two\s*\S*lines/],
      JSON.stringify({ ...SMALL_SITE, constraints: { 'two\nlines': 1 } }),
    );
  });

  test.each([
    [[], /^a command is needed: rank, day, advise, .*, restore; see shadeside --help$/],
    [['rnak'], /^"rnak" is no known command: rank, day, advise, .*serve/],
    [['--jsn'], /^"--jsn" is no known option/],
    [['rank', '--jsn'], /^rank: unknown option '--jsn'; see shadeside rank --help$/],
    [['rank', 'a.json', 'b.json'], /^rank: "b\.json" is one argument too many/],
    [['rank', '--units', 'imperial'], /^rank: --units imperial: allowed are metric and us$/],
    [['advise', '--samples', '0'], /^advise: --samples 0: allowed are whole numbers from 1 to 1000$/],
    [['advise', '--samples', '1001'], /^advise: --samples 1001: allowed/],
    [['advise', '--samples', '1e2'], /^advise: --samples 1e2: allowed/],
    [['advise', '--samples='], /^advise: --samples : allowed/],
    [['advise', '--seed', '-1'], /^advise: option '--seed' argument is ambiguous/],
    [['advise', '--seed=-1'], /^advise: --seed -1: allowed are whole numbers from 0 to 4294967295$/],
    [['advise', '--units', 'si'], /^advise: --units si: allowed are metric and us$/],
    [['serve', '--port', '70000'], /^serve: --port 70000: allowed are whole numbers from 0 to 65535$/],
    [['serve', '--port', '80a'], /^serve: --port 80a: /],
    [['serve', '--host', ''], /^serve: --host is empty/],
    [['serve', 'site.json'], /^serve: "site\.json" is one argument too many/],
  ])('%j is refused', (args, line) => expectRefused(args, [line]));
});

describe('help', () => {
  test('--help lists the commands and the exit codes', async () => {
    for (const args of [['--help'], ['-h'], ['help']]) {
      const { code, stdout, stderr } = await runBuilt(args);
      for (const command of ['rank', 'day', 'advise', 'serve']) expect(stdout).toContain(`\n  ${command} `);
      expect(stdout).toContain('Exit codes');
      expect(stderr).toBe('');
      expect(code).toBe(0);
    }
  });

  test.each(['rank', 'day', 'advise', 'serve'])('%s --help shows its options in 80 columns', async (command) => {
    const { code, stdout } = await runBuilt([command, '--help']);
    expect(stdout).toMatch(new RegExp(`^shadeside ${command} `));
    for (const line of stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(code).toBe(0);
  });

  test('--version is the version of the package', async () => {
    expect(await runBuilt(['--version'])).toEqual({ code: 0, stdout: `${packageFile.version}\n`, stderr: '' });
  });
});
