import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import type { Plan } from '../../shared/plan/plan';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { couponSheets, layOutCoupon } from '../../shared/sheets/coupon-sheets';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { shop } from '../kit/shop';
import { type Move, readProgram } from '../toolpath/rs274-reader';

/** A cut whose lower left corner is at 10, 70 on a blank of 200 by 80 mm, seen from the blank's top left. */
const cutOut = (zero = '', title = 'Tag') =>
    `${shop.replace('spot 0.15 mm', `spot 0.15 mm ${zero}`)} recipe tag "${title}" { revision 2 laser shed
        blank b { of ash-10 size 200 x 80 mm }
        cut rim on b { rectangle 40 x 20 mm at 30, 60 mm without kerf power 90 % speed 10 mm/s passes 1 air on } }`;

function filesOf(plan: Plan): Record<string, string> {
    const { files, problems } = buildSheets(plan, [], new Memo());
    expect(problems).toEqual([]);
    return Object.fromEntries(files.map(({ path: name, text }) => [name, text]));
}

const burns = (move: Move): boolean => !move.rapid && move.s > 0;

describe('one origin for drawing, machine file and job sheet', () => {
    it.each([
        ['', 'lower left corner', [0, 80], [10, 10]],
        ['zero lower-left', 'lower left corner', [0, 80], [10, 10]],
        ['zero lower-right', 'lower right corner', [200, 80], [-190, 10]],
        ['zero upper-left', 'upper left corner', [0, 0], [10, -70]],
        ['zero upper-right', 'upper right corner', [200, 0], [-190, -70]],
        ['zero middle', 'middle', [100, 40], [-90, -30]],
    ])('%s: said in each, and so it is', async (zero, words, inDrawing, onMachine) => {
        const files = filesOf(await planOf(cutOut(zero)));
        const sentence = `X 0 Y 0 is the ${words} of the blank, X to the right, Y away from you`;
        for (const name of ['setup-1-b.svg', 'setup-1-b.ngc', 'job-sheet.html']) expect(files[name], name).toContain(sentence);
        const moves = readProgram(files['setup-1-b.ngc']!).moves.filter(burns);
        expect(Math.min(...moves.map(({ x1 }) => x1))).toBeCloseTo(onMachine[0]!, 3);
        expect(Math.min(...moves.map(({ y1 }) => y1))).toBeCloseTo(onMachine[1]!, 3);
        // The same corner of the cut in the drawing: from the place that it names, with Y downwards.
        const [, x, y] = /in this drawing ([\d.]+), ([\d.]+),/.exec(files['setup-1-b.svg']!)!;
        expect([Number(x), Number(y)]).toEqual(inDrawing);
        const numbers = [...files['setup-1-b.svg']!.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(
            ([, a, b]) => [+a!, +b!] as const,
        );
        const left = Math.min(...numbers.map(([a]) => a));
        const low = Math.max(...numbers.map(([, b]) => b));
        expect(left - Number(x)).toBeCloseTo(onMachine[0]!, 3);
        expect(Number(y) - low).toBeCloseTo(onMachine[1]!, 3);
    });

    it('of a coupon as well', async () => {
        const plan = await planOf(cutOut('zero upper-right'));
        const { laser, blanks } = plan.recipe;
        const layout = layOutCoupon(blanks[0]!.sheet!, laser!, {});
        if ('problem' in layout) throw new Error(layout.problem);
        const sheets = couponSheets(blanks[0]!.sheet!, laser!, layout);
        const sentence = 'X 0 Y 0 is the upper right corner of the coupon, X to the right, Y away from you';
        const told = sheets.files.filter(({ path: name }) => /\.(svg|ngc|html)$/.test(name));
        expect(told).toHaveLength(3);
        for (const { path: name, text } of told) expect(text, name).toContain(sentence);
        const { moves } = readProgram(told.find(({ path: name }) => name === 'coupon.ngc')!.text);
        expect(Math.max(...moves.filter(burns).map(({ x1 }) => x1))).toBeLessThanOrEqual(0);
    });
});

describe('what the head moves over', () => {
    it.each(goodSamples)(
        'of the sample %s is the same in header, job sheet and interpreter',
        async (name) => {
            const files = filesOf(await planOf(...sampleText(name)));
            const programs = Object.entries(files).filter(([file]) => file.endsWith('.ngc'));
            expect(programs.length).toBeGreaterThan(0);
            for (const [file, text] of programs) {
                const { moves, comments } = readProgram(text);
                const said = /moves over (X \S+ to \S+, Y \S+ to \S+ mm)/;
                const [, header] = comments.map((comment) => said.exec(comment)).find((match) => match !== null)!;
                expect(files['job-sheet.html'], file).toContain(`The head moves over ${header}`);
                const [lowX, highX, lowY, highY] = header!.match(/-?[\d.]+/g)!.map(Number);
                let [minX, maxX, minY, maxY] = [0, 0, 0, 0];
                for (const { x1, y1 } of moves) {
                    [minX, maxX, minY, maxY] = [Math.min(minX, x1), Math.max(maxX, x1), Math.min(minY, y1), Math.max(maxY, y1)];
                }
                for (const [told, seen] of [
                    [lowX!, minX],
                    [highX!, maxX],
                    [lowY!, minY],
                    [highY!, maxY],
                ] as const)
                    expect(Math.abs(told - seen), `${file}: ${header}, seen ${seen}`).toBeLessThan(0.0101);
            }
        },
        120_000,
    );
});

describe('titles of strangers', () => {
    it.skipIf(process.platform === 'win32')('run nothing when a shell is handed the machine file', async () => {
        const folder = mkdtempSync(path.join(tmpdir(), 'kerfbook-shell-'));
        try {
            const title = 'x; touch a; $(touch b) `touch c` & touch d | touch e && touch f || touch g ) touch h ( > i';
            const files = filesOf(await planOf(cutOut('', title)));
            const text = files['setup-1-b.ngc']!;
            expect(text).toContain('touch a');
            writeFileSync(path.join(folder, 'file.ngc'), text);
            const bare = text.replace('kerfbook: Tag', '').replace(/^\(kerfbook: machine file.*\n/, '');
            writeFileSync(path.join(folder, 'rest.ngc'), bare);
            for (const name of ['file.ngc', 'rest.ngc']) {
                try {
                    execFileSync('sh', [name], { cwd: folder, stdio: 'ignore', env: { PATH: process.env.PATH } });
                } catch {
                    // Hardly any of its lines is a command.
                }
            }
            expect(readdirSync(folder).sort()).toEqual(['file.ngc', 'rest.ngc']);
        } finally {
            rmSync(folder, { recursive: true, force: true });
        }
    });

    it('run nothing on the job sheet, and fetch nothing', async () => {
        const plan = await planOf(cutOut('', '<script>alert(1)</script><img src=x onerror=alert(2)>'));
        const html = filesOf(plan)['job-sheet.html']!;
        const [, policy] = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(html)!;
        expect(policy).toMatch(/^default-src 'none';/);
        expect(policy).not.toMatch(/script|https?:|\*/);
        // The policy comes before anything that it has to hold for, and nothing on the sheet needs more than it allows.
        expect(html.indexOf('Content-Security-Policy')).toBeLessThan(html.indexOf('<title'));
        expect(html).not.toMatch(/<script|<img src=x|<[a-z][^>]*\son\w+=|<link|url\(/i);
        for (const [, source] of html.matchAll(/\ssrc="([^"]*)"/g)) expect(source).toMatch(/^data:/);
    });
});
