import { describe, expect, it } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { examine } from '../../shared/rules/examine';
import { buildSheets } from '../../shared/sheets/build-sheets';
import { couponSheets, layOutCoupon } from '../../shared/sheets/coupon-sheets';
import { planJson } from '../../shared/sheets/plan-json';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';
import { readProgram } from '../toolpath/rs274-reader';

const tray = (output: string, body: string) => `${shop.replace('spot 0.15 mm', `spot 0.15 mm ${output}`)}
recipe tray { laser shed  blank lid { of walnut-12  size 90 x 60 mm  grain along width }
  engrave well on lid { rectangle 40 x 30 mm  ${body} } }`;

async function made(output: string, body = 'depth 0.5 mm  passes 2  outline 2') {
    const plan = await planOf(tray(output, body));
    const { files } = buildSheets(plan, [], new Memo());
    const file = (ending: string): string => files.find(({ path }) => path.endsWith(ending))?.text ?? '';
    const { laser } = plan.steps[0]!;
    return { plan, laser: laser!, machine: file('.ngc'), sheet: file('job-sheet.html') };
}

const burning = ({ rapid, s }: { rapid: boolean; s: number }): boolean => !rapid && s > 0;

describe('how the power of a laser works', () => {
    it('constant where nothing is said: M3, S 1000 for all of it, and the file lowers S along the outline', async () => {
        const { machine, sheet, laser } = await made('');
        expect(machine).toMatch(/^M3$/m);
        expect(machine).not.toMatch(/^M4$/m);
        expect(machine).toContain('(kerfbook: M3: constant power. Along outlines S goes down where the head is slower)');
        expect(machine).toContain('S 0 to 1000 stands for 0 to');
        expect(sheet).toContain('M3, constant power, S 1000 for full power');
        // From rest, and no power below the least: the corner in which it begins gets more.
        expect(laser.outline?.strongest?.times).toBeGreaterThan(1.02);
        expect(laser.outline?.strongest?.deepest).toBeGreaterThan(laser.outline!.deepest!);
        expect(Math.max(...readProgram(machine).moves.map(({ s }) => s))).toBeGreaterThan(255);
    });

    it('with the speed: M4, one S along the whole outline, and no corner gets more', async () => {
        const { machine, sheet, laser } = await made('output with-speed full output 255');
        expect(machine).toMatch(/^M4$/m);
        expect(machine).not.toMatch(/^M3$/m);
        expect(machine).toContain('(kerfbook: M4: the machine lowers the power where the head is slower than F)');
        expect(machine).toContain('S 0 to 255 stands for 0 to');
        expect(sheet).toContain('M4, power that follows the speed, S 255 for full power');
        expect(laser.outline?.strongest).toBeUndefined();
        const burnt = readProgram(machine).moves.filter(burning);
        expect(new Set(burnt.map(({ s }) => s)).size).toBe(2);
        expect(Math.max(...burnt.map(({ s }) => s))).toBeLessThanOrEqual(255);
        const constant = readProgram((await made('')).machine).moves.filter(burning);
        expect(burnt[0]!.s / 255).toBeCloseTo(constant[0]!.s / 1000, 4);
    });

    it('stands in the plan, and in what a coupon writes', async () => {
        const { plan } = await made('output with-speed full output 255');
        expect(planJson(plan, [])).toMatchObject({ output: { followsSpeed: true, word: 'M4', full: 255 } });
        const { laser, blanks } = plan.recipe;
        const layout = layOutCoupon(blanks[0]!.sheet!, laser!, {});
        if ('problem' in layout) throw new Error(layout.problem);
        const ngc = couponSheets(blanks[0]!.sheet!, laser!, layout).files.find(({ path }) => path === 'coupon.ngc')!.text;
        expect(ngc).toMatch(/^M4$/m);
        expect(ngc).toContain('S 0 to 255');
    });

    it('a line that is followed gets one dose all along it too', async () => {
        const line = 'scan along outline  depth 0.3 mm  speed 100 mm/s';
        const { laser, machine } = await made('', line);
        const shares = new Set(
            readProgram(machine)
                .moves.filter(burning)
                .map(({ s }) => s),
        );
        expect(shares.size).toBeGreaterThan(2);
        expect(laser.strongest?.times).toBeGreaterThan(1);
        expect((await made('output with-speed', line)).laser.strongest).toBeUndefined();
    });

    it('a short run-up holds no speed down and scorches no end where the power follows the speed', async () => {
        const short = 'overtravel 1 mm';
        const held = await made(short, 'depth 0.1 mm');
        const free = await made(`${short} output with-speed`, 'depth 0.1 mm');
        expect(held.laser.settings!.speed).toBeLessThan(free.laser.settings!.speed);
        const written = 'depth 0.5 mm power 80 % speed 400 mm/s pitch 0.1 mm passes 2';
        const said = async (output: string) => examine((await made(`${short} ${output}`, written)).plan).map(({ rule }) => rule);
        expect(await said('')).toContain('short-overtravel');
        expect(await said('output with-speed')).not.toContain('short-overtravel');
    });
});
