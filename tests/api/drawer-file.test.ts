import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FILES, type Files } from '../../api/drawer/disk.ts';
import { dataFolder, insideProgram } from '../../api/drawer/place.ts';
import { takeTurn } from '../../api/drawer/turn.ts';
import { drawerIn, newFolder, OBJECTIVE, RELAY, SENSOR, tidyUp } from './drawer-support.ts';
import { expectProblem } from './support.ts';

/** The drawer's file: where it is, what is never touched, disks that fail, and others who write it too. */

tidyUp();

describe('where it is', () => {
  test('PUPILWALK_DATA first, then the custom of the system', () => {
    expect(dataFolder({ PUPILWALK_DATA: '/data/mine', XDG_DATA_HOME: '/xdg', HOME: '/home/a' })).toBe('/data/mine');
    expect(dataFolder({ PUPILWALK_DATA: 'mine' })).toBe(join(process.cwd(), 'mine'));
    expect(dataFolder({ PUPILWALK_DATA: '', XDG_DATA_HOME: '/xdg' })).toBe('/xdg/pupilwalk');
    for (const XDG_DATA_HOME of [undefined, '', 'relative'])
      expect(dataFolder({ XDG_DATA_HOME })).toMatch(/^\/.*\/\.local\/share\/pupilwalk$/);
  });
  test('never inside the program', () => {
    const program = join(import.meta.dirname, '..', '..');
    for (const inside of [program, join(program, 'data'), join(program, 'dist', 'x'), join(program, '..x')])
      expect(insideProgram(inside)).toBe(true);
    for (const outside of [join(program, '..'), `${program}-data`, '/']) expect(insideProgram(outside)).toBe(false);
  });
  test('what is kept is for its owner alone, and a name that stands for a file elsewhere goes on doing so', async () => {
    if (process.platform === 'win32') return;
    const [folder, elsewhere] = [newFolder(), newFolder()];
    const at = join(folder, 'new');
    expect((await drawerIn(at).add(RELAY)).status).toBe(201);
    const mode = (path: string) => execFileSync('stat', ['-c', '%a', path], { encoding: 'utf8' }).trim();
    if (process.platform === 'linux') expect([mode(at), mode(join(at, 'drawer.json'))]).toEqual(['700', '600']);
    const real = join(elsewhere, 'kept.json');
    writeFileSync(real, readFileSync(join(at, 'drawer.json')));
    chmodSync(real, 0o640);
    symlinkSync(real, join(folder, 'drawer.json'));
    expect((await drawerIn(folder).add(SENSOR)).status).toBe(201);
    expect(readFileSync(join(folder, 'drawer.json'), 'utf8')).toContain('my-camera');
    expect(readFileSync(real, 'utf8')).toContain('my-camera');
    if (process.platform === 'linux') expect(mode(real)).toBe('640');
    expect(readdirSync(elsewhere)).toEqual(['kept.json']);
  });
});

describe('a file that is not understood is left as it is', () => {
  const part = { id: 'a', version: 1, ...SENSOR };
  const file = (change: object) => JSON.stringify({ pupilwalkDrawer: 1, revision: 3, parts: [part], ...change });
  test.each([
    ['of a later version', file({ pupilwalkDrawer: 2 }), /later version/],
    ['of a version that never was', file({ pupilwalkDrawer: 1.5 }), /later version|never was/],
    ['of something else', '{"name":"pupilwalk"}', /no drawer of this program/],
    ['with a list in it', '[]', /no drawer of this program/],
    ['that is empty', '', /is empty/],
    ['cut short', file({}).slice(0, -20), /damaged: it is no whole JSON/],
    ['of bytes', '\u0000\u0001', /damaged/],
    [
      'with a part spoilt',
      file({ parts: [part, { ...part, id: 'b', part: { ...SENSOR.part, widthMm: 'wide' } }] }),
      /damaged at parts \/ 1 \/ part \/ widthMm/,
    ],
    ['with two parts of one id', file({ parts: [part, part] }), /same id/],
    ['with a revision in words', file({ revision: 'three' }), /damaged at revision/],
    ['with more in it', file({ shelf: 1 }), /damaged at its top/],
  ])('%s', async (_, text, why) => {
    const one = drawerIn();
    writeFileSync(one.file, text);
    const { drawer, objectives } = await one.parts();
    expect(drawer).toEqual({ state: 'refused', why: expect.stringMatching(why), file: one.file });
    expect(objectives.length).toBeGreaterThan(10);
    const writes = [
      await one.add(RELAY),
      await one.put('a', SENSOR, '"1"'),
      await one.remove('a', '"1"'),
      await one.takeIn({ pupilwalkDrawer: 1, parts: [RELAY] }),
      await one.ask('GET', '/api/parts/drawer.json'),
      await one.ask('GET', '/api/parts/drawer.csv'),
    ];
    for (const answer of writes) {
      const { detail, errors } = expectProblem(answer, 409);
      expect(errors[0]).toMatchObject({ code: 'drawerRefused', message: expect.stringMatching(why) });
      expect(detail).toContain(one.file);
    }
    expect(readFileSync(one.file, 'utf8')).toBe(text);
    expect(readdirSync(one.folder)).toEqual(['drawer.json']);
    // Mended, it is the drawer again, without a new start.
    writeFileSync(one.file, `\uFEFF${file({})}`);
    expect((await one.parts()).drawer).toEqual({ state: 'open', revision: 3, parts: 1, file: one.file });
    expect((await one.add(RELAY)).status).toBe(201);
  });
  test('a folder in its place, or a file larger than any drawer', async () => {
    const [one, other] = [drawerIn(), drawerIn()];
    mkdirSync(one.file);
    expect((await one.parts()).drawer).toMatchObject({ state: 'refused', why: expect.stringMatching(/cannot be read \(EISDIR\)/) });
    expectProblem(await one.add(RELAY), 409);
    writeFileSync(other.file, file({}).padEnd(8 * 1024 * 1024 + 1));
    expect((await other.parts()).drawer.why).toMatch(/larger than 8388608 bytes/);
  });
});

/** A file system on which a step fails; of a write that fails half is there by then, as on a real disk. */
function failing(
  step: 'open' | 'write' | 'sync' | 'rename' | 'mkdir' | 'settle',
  code: string,
  only = (_path: string) => true,
): Files & { armed: boolean } {
  const error = () => Object.assign(new Error(`${code}: simulated`), { code });
  const files = {
    ...FILES,
    armed: true,
    open: (async (path: string, flags: string, mode: number) => {
      const isNew = path.endsWith('.new');
      if (files.armed && step === 'open' && isNew) throw error();
      const handle = await open(path, flags, mode);
      if (!files.armed) return handle;
      if (step === 'settle' && flags === 'r') handle.sync = () => Promise.reject(error());
      if (isNew && step === 'write') {
        const whole = handle.writeFile.bind(handle);
        handle.writeFile = (async (text: string) => {
          await whole(text.slice(0, text.length / 2));
          throw error();
        }) as never;
      }
      if (isNew && step === 'sync') handle.sync = () => Promise.reject(error());
      return handle;
    }) as never,
    rename: (async (from: string, to: string) => {
      if (files.armed && step === 'rename' && only(from)) throw error();
      return FILES.rename(from, to);
    }) as never,
    mkdir: (async (path: string, options: object) => {
      if (files.armed && step === 'mkdir') throw error();
      return FILES.mkdir(path, options);
    }) as never,
  };
  return files;
}

describe('a disk that fails', () => {
  test.each([
    ['write', 'ENOSPC', 507, 'diskFull'],
    ['sync', 'EDQUOT', 507, 'diskFull'],
    ['open', 'ENOSPC', 507, 'diskFull'],
    ['open', 'EROFS', 503, 'notWritten'],
    ['open', 'EACCES', 503, 'notWritten'],
    ['rename', 'EPERM', 503, 'notWritten'],
    ['sync', 'EIO', 503, 'notWritten'],
    ['mkdir', 'EROFS', 503, 'notWritten'],
  ] as const)('%s with %s: old file, old memory, a sentence', async (step, errno, status, code) => {
    const files = failing(step, errno);
    files.armed = false;
    const one = drawerIn(newFolder(), files);
    await one.add({ ...RELAY, id: 'mine' });
    const before = readFileSync(one.file, 'utf8');
    files.armed = true;
    for (const answer of [
      await one.add(SENSOR),
      await one.put('mine', { ...RELAY, price: 1 }, '"1"'),
      await one.remove('mine', '"1"'),
      await one.takeIn({ pupilwalkDrawer: 1, parts: [OBJECTIVE] }),
    ]) {
      const [error] = expectProblem(answer, status).errors;
      expect(error).toMatchObject({ code, message: expect.stringMatching(/was not kept/), given: expect.stringContaining(errno) });
    }
    expect(one.faults.map((fault) => (fault as { code: string }).code)).toEqual([errno, errno, errno, errno]);
    expect(readFileSync(one.file, 'utf8')).toBe(before);
    expect(readdirSync(one.folder)).toEqual(['drawer.json']);
    const { relays, drawer } = await one.parts();
    expect([relays[0].own, drawer.revision, drawer.parts]).toEqual([{ owned: true, price: 120, notes: 'from the fair', version: 1 }, 1, 1]);
    files.armed = false;
    expect((await one.put('mine', { ...RELAY, price: 2 }, '"1"')).json.version).toBe(2);
  });
  test('a folder whose names cannot be put onto the disk: not promised, and memory says what stands there', async () => {
    const files = failing('settle', 'EIO');
    const one = drawerIn(newFolder(), files);
    expectProblem(await one.add(SENSOR), 503);
    expect((await one.parts()).drawer).toMatchObject({ revision: 1, parts: 1 });
    expect(JSON.parse(readFileSync(one.file, 'utf8')).revision).toBe(1);
  });
  test('a file in the place of the folder, or on the way to it', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'taken'), '');
    for (const at of ['taken', 'taken/deeper']) {
      const { errors } = expectProblem(await drawerIn(join(folder, at)).add(RELAY), 503);
      expect(errors[0]?.expected).toMatch(/^a folder: .* is a file$/);
    }
  });
  const root = process.getuid?.() === 0;
  test.skipIf(root || process.platform === 'win32')('a folder that may not be written', async () => {
    const one = drawerIn();
    await one.add(RELAY);
    chmodSync(one.folder, 0o500);
    expect(expectProblem(await one.add(SENSOR), 503).errors[0]?.expected).toMatch(/PUPILWALK_DATA/);
    chmodSync(one.folder, 0o700);
    expect((await one.add(SENSOR)).status).toBe(201);
  });
  test.runIf(root && process.platform === 'linux')('a real disk of 64 kB that fills up', async () => {
    const folder = newFolder();
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', folder]).status !== 0) return;
    try {
      const one = drawerIn(folder);
      const kept: string[] = [];
      for (let i = 0; i < 100; i++) {
        const answer = await one.add({ ...SENSOR, id: `s-${i}`, notes: 'x'.repeat(1900) });
        if (answer.status !== 201) {
          expectProblem(answer, 507);
          break;
        }
        kept.push(answer.json.id);
      }
      expect(kept.length).toBeGreaterThan(5);
      expect(kept.length).toBeLessThan(40);
      expect(JSON.parse(readFileSync(one.file, 'utf8')).parts.map(({ id }: { id: string }) => id)).toEqual(kept);
      expect((await one.parts()).drawer).toMatchObject({ state: 'open', parts: kept.length, revision: kept.length });
    } finally {
      spawnSync('umount', [folder]);
    }
  });
});

describe('others who write it', () => {
  test('two servers on one file: no write of either is lost, and each sees the other', async () => {
    const folder = newFolder();
    const [one, other] = [drawerIn(folder), drawerIn(folder)];
    const answers = await Promise.all(Array.from({ length: 40 }, (_, i) => (i % 2 ? one : other).add({ ...SENSOR, id: `s-${i}` })));
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 201));
    for (const { parts } of [one, other]) expect((await parts()).drawer).toMatchObject({ revision: 40, parts: 40 });
    const changes = await Promise.all([one, other, one, other].map((tab, i) => tab.put('s-3', { ...SENSOR, price: i }, '"1"')));
    expect(changes.map(({ status }) => status).sort()).toEqual([200, 412, 412, 412]);
    expect(readdirSync(folder)).toEqual(['drawer.json']);
  });
  test('a hand that edits the file is seen at once, and its versions go on', async () => {
    const one = drawerIn();
    await one.add({ ...RELAY, id: 'mine' });
    await one.add({ ...SENSOR, id: 'cam' });
    const edited = readFileSync(one.file, 'utf8').replace('"price": 120', '"price": 99');
    writeFileSync(one.file, edited);
    expect((await one.parts()).relays[0].own).toMatchObject({ price: 99, version: 2 });
    expectProblem(await one.put('mine', RELAY, '"1"'), 412);
    expect((await one.put('mine', RELAY, '"2"')).json.version).toBe(3);
    // Taken out and put in again by hand, it is another part than the one that was seen.
    const file = JSON.parse(readFileSync(one.file, 'utf8'));
    writeFileSync(one.file, JSON.stringify({ ...file, parts: [] }));
    expect((await one.parts()).drawer).toMatchObject({ parts: 0 });
    expect((await one.add({ ...SENSOR, id: 'cam' })).json.version).toBe(2);
    expect(JSON.parse(readFileSync(one.file, 'utf8'))).toMatchObject({ revision: 4, gone: [{ id: 'mine', version: 3 }] });
  });
  test('a file written anew with the same length within the same moment is not mistaken for the old one', async () => {
    const one = drawerIn();
    await one.add({ ...RELAY, id: 'mine' });
    const { parts } = one;
    expect((await parts()).relays[0].own.price).toBe(120);
    const text = readFileSync(one.file, 'utf8').replace('120', '121');
    utimesSync(one.file, 1, 1);
    expect((await parts()).relays[0].own.price).toBe(120);
    await FILES.rm(one.file);
    writeFileSync(one.file, text);
    utimesSync(one.file, 2, 2);
    expect((await parts()).relays[0].own.price).toBe(121);
  });
  test('a drawer that is thrown away is empty, and its versions are not used again', async () => {
    const one = drawerIn();
    await one.add({ ...RELAY, id: 'mine' });
    await FILES.rm(one.file);
    expect((await one.parts()).drawer).toMatchObject({ state: 'open', parts: 0 });
    expect((await one.add({ ...RELAY, id: 'mine' })).json.version).toBe(2);
  });
});

describe('whose turn it is to write', () => {
  const flags = (folder: string) => readdirSync(folder).filter((name) => name.includes('.turn.'));
  test("is one's at a time, among many", async () => {
    const path = join(newFolder(), 'drawer.json');
    let within = 0;
    let most = 0;
    await Promise.all(
      Array.from({ length: 12 }, async () => {
        const done = await takeTurn(path);
        most = Math.max(most, ++within);
        await new Promise((resolve) => setTimeout(resolve, 1));
        within--;
        await done();
      }),
    );
    expect(most).toBe(1);
    expect(flags(join(path, '..'))).toEqual([]);
  });
  test('is given up after a while, and said', async () => {
    const one = drawerIn();
    const done = await takeTurn(one.file);
    await expect(takeTurn(one.file, FILES, 30)).rejects.toMatchObject({ code: 'EBUSY' });
    expect(flags(one.folder)).toHaveLength(1);
    await done();
    expect((await one.add(RELAY)).status).toBe(201);
  });
  test('is not held up by what a killed process left, flag or file', async () => {
    const one = drawerIn();
    const script = 'process.stdout.write(String(process.pid)); process.kill(process.pid, "SIGKILL")';
    const dead = spawnSync(process.execPath, ['-e', script], { encoding: 'utf8' }).stdout;
    const done = await takeTurn(one.file);
    const [mine = ''] = flags(one.folder);
    await done();
    const [base, turn, host, boot, pid, since, chance] = mine.split('.').slice(1);
    const flag = (change: Record<string, string>) => {
      const told = { host, boot, pid, since, ...change };
      return join(one.folder, `drawer.${base}.${turn}.${told.host}.${told.boot}.${told.pid}.${told.since}.${chance}`);
    };
    const left = [
      flag({ pid: dead }),
      flag({ boot: '0'.repeat(8) }),
      ...(process.platform === 'linux' ? [flag({ since: '1' })] : []),
      join(one.folder, `drawer.json.${'0'.repeat(12)}.new`),
    ];
    for (const path of left) writeFileSync(path, '{');
    const foreign = flag({ host: 'f'.repeat(8) });
    writeFileSync(foreign, '');
    utimesSync(foreign, 1, 1);
    const others = ['drawer.json.new', 'drawer.json.turn.x', 'notes.txt'];
    for (const name of others) writeFileSync(join(one.folder, name), '');
    const began = performance.now();
    expect((await one.add(RELAY)).status).toBe(201);
    expect(performance.now() - began).toBeLessThan(5000);
    expect(readdirSync(one.folder).sort()).toEqual(['drawer.json', ...others].sort());
    // One of another machine on a shared folder counts while it is young.
    writeFileSync(foreign, '');
    await expect(takeTurn(one.file, FILES, 30)).rejects.toMatchObject({ code: 'EBUSY' });
    expect(existsSync(foreign)).toBe(true);
  });
});
