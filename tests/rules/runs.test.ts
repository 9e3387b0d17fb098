import { describe, expect, it } from 'vitest';
import { shop } from '../kit/shop';
import { of, one, silent, words, workshop } from './harness';

workshop();

const dated = (laser = '', coupon = 'burnt 2026-01-10'): string =>
    shop.replace('pitch 0.10 mm', `pitch 0.10 mm\n  ${coupon}`).replace('laser shed {', `laser shed { ${laser}`);

interface Told {
    readonly stock?: string;
    readonly issue?: number;
    readonly pocket?: string;
    readonly check?: string;
    readonly runs?: string;
}

const tray = ({
    stock = dated(),
    issue = 3,
    pocket = 'depth 0.5 mm',
    check = 'depth 0.45 .. 0.55 mm',
    runs = '',
}: Told): string => `${stock}
recipe tray "Tray" {
  issue ${issue} make 1 laser shed
  art flag "flag.svg"
  blank tray { of walnut-12 size 100 x 80 mm grain along width }
  engrave pocket on tray { art flag ${pocket} air off }
  check pocket { ${check} }
}
${runs}`;

/** By the coupon, 80 % at 387 mm/s x 2 digs 0.50 mm. */
const run = (date: string, measured: string, { issue = 3, at = '80 % at 387 mm/s x 2', more = '' } = {}): string =>
    `run tray ${date} { issue ${issue} laser shed pocket of walnut-12 ${at} pitch 0.10 mm ${measured} ${more} }\n`;

const scatter = [1, -2, 1, 0, -1, 2, -1, 1, 0, -1, 1, 0];
/** A run a week, so deep in each. */
const weekly = (depth: (week: number) => number, first = Date.UTC(2026, 1, 1)): string =>
    scatter
        .map((each, week) =>
            run(
                new Date(first + 7 * 86_400_000 * week).toISOString().slice(0, 10),
                `depth ${(depth(week) + 0.01 * each).toFixed(2)} mm`,
            ),
        )
        .join('');

describe('run-misses-check', () => {
    it('is silent where the newest run passes, whatever was before', async () => {
        await silent(tray({ runs: run('2026-02-01', 'depth 0.50 mm') }), 'run-misses-check');
        await silent(tray({ runs: run('2026-02-01', 'depth 0.40 mm') + run('2026-03-01', 'depth 0.55 mm') }), 'run-misses-check');
        await silent(tray({ runs: run('2026-03-01', 'depth 0.45 mm') + run('2026-02-01', 'depth 0.40 mm') }), 'run-misses-check');
    });
    it('is silent where nothing was measured, or there is no check', async () => {
        await silent(tray({ runs: run('2026-02-01', '') }), 'run-misses-check');
        await silent(tray({ runs: run('2026-02-01', 'depth 0.40 mm'), check: 'width 3 .. 4 mm' }), 'run-misses-check');
    });
    it('is silent once it has had its answer: another issue, a new coupon, a service, another board', async () => {
        const runs = run('2026-02-01', 'depth 0.40 mm');
        await silent(tray({ issue: 4, runs }), 'run-misses-check');
        await silent(tray({ stock: dated('', 'burnt 2026-02-02'), runs }), 'run-misses-check');
        await silent(tray({ stock: dated('serviced 2026-02-02 '), runs }), 'run-misses-check');
        const bought = dated().replace('board walnut-12 {', 'board walnut-12 { bought 2026-02-02 ');
        await silent(tray({ stock: bought, runs }), 'run-misses-check');
        await silent(tray({ runs: runs.replace('of walnut-12', 'of ash-10') }), 'run-misses-check');
    });
    it('tells by how much, where it was measured, and how the next one is planned', async () => {
        const text = tray({ runs: run('2026-02-01', 'depth 0.40 mm') });
        const finding = await one(text, 'run-misses-check');
        expect(finding.message).toMatch(
            /^pocket came out 0\.4 mm deep on 2026-02-01, 0\.05 mm too little: its check is 0\.5 mm ± 0\.05 mm\. With that counted in, the next is planned at 80 % at \d+ mm\/s x 2: measure it, too\.$/,
        );
        // Slower than by the coupon alone, since the run says that less power is there.
        expect(Number(/at (\d+) mm\/s/.exec(finding.message)![1])).toBeLessThan(370);
        expect(words(text, finding)).toBe('0.45 .. 0.55 mm');
        expect(text.slice(finding.related[0]!.where.offset)).toMatch(/^pocket of walnut-12 80 %/);
    });
    it('a width and a depth that is too much, too', async () => {
        const both = tray({
            check: 'depth 0.45 .. 0.55 mm width 3 .. 3.2 mm',
            runs: run('2026-02-01', 'depth 0.58 mm', { more: 'width 3.3 mm' }),
        });
        expect((await of(both, 'run-misses-check')).map(({ message }) => message.slice(0, 70))).toEqual([
            expect.stringContaining('0.58 mm deep on 2026-02-01, 0.03 mm too much'),
            expect.stringContaining('3.3 mm wide on 2026-02-01, 0.1 mm too much'),
        ]);
    });
    it('leaves pinned settings that no longer give the depth to the rule that mends them', async () => {
        const held = tray({
            pocket: 'depth 0.5 mm power 80 % speed 387 mm/s passes 2',
            runs: run('2026-02-01', 'depth 0.40 mm') + run('2026-02-08', 'depth 0.39 mm'),
        });
        await one(held, 'settings-miss-depth');
        await silent(held, 'run-misses-check');
    });
    it('can be allowed', async () => {
        const text = tray({
            check: 'depth 0.45 .. 0.55 mm allow run-misses-check because "sold as a second"',
            runs: run('2026-02-01', 'depth 0.40 mm'),
        });
        await silent(text, 'run-misses-check');
    });
});

describe('run-outside-told', () => {
    const wide = 'depth 0.30 .. 0.70 mm';

    it('is silent of what was to be expected, and of what only the runs of a year ago did not', async () => {
        await silent(tray({ check: wide, runs: run('2026-02-01', 'depth 0.48 mm') }), 'run-outside-told');
        const old = run('2026-02-01', 'depth 0.35 mm') + run('2026-03-01', 'depth 0.48 mm');
        await silent(tray({ check: wide, runs: old }), 'run-outside-told');
    });
    it('is silent where a laser or board has changed since, and where the range was a guess', async () => {
        const runs = run('2026-02-01', 'depth 0.35 mm');
        await silent(tray({ stock: dated('serviced 2026-02-02 '), check: wide, runs }), 'run-outside-told');
        const guess = shop.slice(0, shop.indexOf('coupon walnut-12')) + shop.slice(shop.indexOf('resin tide-blue'));
        await silent(tray({ stock: guess, check: wide, runs }), 'run-outside-told');
    });
    it('is silent where the check says it, or a drift does', async () => {
        const missed = tray({ runs: run('2026-02-01', 'depth 0.35 mm') });
        await one(missed, 'run-misses-check');
        await silent(missed, 'run-outside-told');
        const drifting = tray({ check: wide, runs: weekly((week) => 0.5 - 0.005 * week - (week > 8 ? 0.1 : 0)) });
        await one(drifting, 'power-drifts');
        await silent(drifting, 'run-outside-told');
    });
    it('tells what was to be expected, and which square to burn', async () => {
        const text = tray({ check: wide, runs: run('2026-02-01', 'depth 0.38 mm') });
        const finding = await one(text, 'run-outside-told');
        expect(finding).toMatchObject({ severity: 'info' });
        expect(finding.message).toMatch(
            /^pocket came out 0\.38 mm deep on 2026-02-01; 0\.39 mm to 0\.61 mm was to be expected of its settings\. .* burn a square at 36 W and 387 mm\/s x 2 on an offcut\.$/,
        );
        expect(words(text, finding)).toBe('0.5 mm');
    });
    it('holds a run against what was known before it, not against itself', async () => {
        // Twelve weeks at 0.40 have taught the law; the coupon alone would still expect 0.50.
        const runs = weekly(() => 0.4) + run('2026-04-26', 'depth 0.41 mm');
        await silent(tray({ check: wide, runs }), 'run-outside-told');
        const back = weekly(() => 0.4) + run('2026-04-26', 'depth 0.52 mm');
        const [said] = await of(tray({ check: wide, runs: back }), 'run-outside-told');
        expect(said?.message).toContain('0.52 mm deep');
    });
});

describe('power-drifts', () => {
    const wide = 'depth 0.10 .. 0.90 mm';

    it('is silent where nothing changes, also where pockets differ from squares all along', async () => {
        for (const depth of [0.44, 0.5, 0.56]) await silent(tray({ check: wide, runs: weekly(() => depth) }), 'power-drifts');
    });
    it('is silent of what was before a service or a new coupon', async () => {
        const runs = weekly((week) => 0.5 - 0.012 * week);
        await one(tray({ check: wide, runs }), 'power-drifts');
        await silent(tray({ stock: dated('serviced 2026-05-01 '), check: wide, runs }), 'power-drifts');
        await silent(tray({ stock: dated('', 'burnt 2026-05-01'), check: wide, runs }), 'power-drifts');
    });
    it('is silent in other recipes on the board', async () => {
        const runs = weekly((week) => 0.5 - 0.012 * week);
        const other = tray({ check: wide }).slice(dated().length).replace('recipe tray', 'recipe bowl');
        const text = tray({ check: wide, runs }) + other;
        expect((await of(text, 'power-drifts')).map(({ where }) => where.offset < text.indexOf('recipe bowl'))).toEqual([true]);
    });
    it('tells per cent a month, since when, by how many days, and what to do', async () => {
        const finding = await one(tray({ check: wide, runs: weekly((week) => 0.5 - 0.012 * week) }), 'power-drifts');
        expect(finding.message).toMatch(
            /^shed in walnut-12: −\d+(\.\d)? % \(−\d.* to −\d.* %\) of power a month since 2026-0\d-\d\d, by \d+ days of runs\. Depths are planned with it; clean lens and mirrors, write the day as serviced into shed, and burn a new coupon\.$/,
        );
    });
    it('tells a step as one', async () => {
        const finding = await one(tray({ check: wide, runs: weekly((week) => (week < 8 ? 0.5 : 0.38)) }), 'power-drifts');
        expect(finding.message).toMatch(/^shed in walnut-12: −\d\d.* of power, at once, since 2026-03-29, by 4 days of runs\./);
    });
});
