import { describe, expect, it } from 'vitest';
import { fillRecipe, inlayRecipe } from '../kit/shop';
import { expectMended, one, recipe, silent, words, workshop } from './harness';

workshop();

const walnut = 'blank b { of walnut-12 size 100 x 80 mm grain along width }';
const engraving = (body: string) => recipe(`${walnut}\n engrave e on b { art flag ${body} air off }`);

describe('air-off-while-cutting', () => {
    it('a cut without air', async () => {
        const text = recipe(`${walnut}\n cut rim on b { circle 60 mm air off }`);
        await expectMended(text, await one(text, 'air-off-while-cutting'));
    });
    it('is silent with air, when nothing is said, and for engravings', async () => {
        await silent(recipe(`${walnut}\n cut rim on b { circle 60 mm air on }`), 'air-off-while-cutting');
        await silent(recipe(`${walnut}\n cut rim on b { circle 60 mm }`), 'air-off-while-cutting');
        await silent(fillRecipe(), 'air-off-while-cutting');
    });
});

describe('air-while-engraving and scan-along-grain', () => {
    const plain = (body: string) => recipe(`${walnut}\n engrave e on b { art flag depth 0.3 mm ${body} }`);

    it('are mended by their fixes', async () => {
        const air = plain('air on');
        expect(await expectMended(air, await one(air, 'air-while-engraving'))).toBe(plain('without air'));
        for (const scan of ['scan along grain', 'scan at 10 deg one way']) {
            const along = plain(scan);
            expect(await expectMended(along, await one(along, 'scan-along-grain'))).toContain('scan across grain');
        }
    });
    it('are silent with the air off, for cuts, across the grain, and when nothing is said', async () => {
        for (const body of ['air off scan across grain', 'scan at 80 deg', '']) {
            await silent(plain(body), 'air-while-engraving');
            await silent(plain(body), 'scan-along-grain');
        }
        await silent(recipe(`${walnut}\n cut rim on b { circle 60 mm air on }`), 'air-while-engraving');
    });
});

describe('one-heavy-pass', () => {
    it('a deep pocket in a single written pass', async () => {
        const text = engraving('depth 0.6 mm passes 1');
        const finding = await one(text, 'one-heavy-pass');
        expect(finding.message).toBe('e goes 0.6 mm deep in one pass; 3 lighter ones char less.');
        await expectMended(text, finding);
    });
    it('two that are still heavy', async () => {
        const finding = await one(engraving('depth 1 mm passes 2'), 'one-heavy-pass');
        expect(finding.message).toBe('e goes 1 mm deep in 2 passes; 4 lighter ones char less.');
    });
    it('has no fix while the settings are held', async () => {
        expect((await one(engraving('depth 0.6 mm power 80 % speed 150 mm/s passes 1'), 'one-heavy-pass')).fixes).toEqual([]);
    });
    it('is silent for light passes, for burning through veneer, and when nothing is said', async () => {
        await silent(engraving('depth 0.3 mm passes 1'), 'one-heavy-pass');
        await silent(engraving('depth 0.6 mm passes 3'), 'one-heavy-pass');
        await silent(
            inlayRecipe({ relief: 'art flag inverse within grown 6 mm mirror depth through passes 1 air off' }),
            'one-heavy-pass',
        );
        await silent(engraving('depth 0.6 mm'), 'one-heavy-pass');
    });
});

describe('coarse-pitch', () => {
    it('lines as far apart as the spot is wide', async () => {
        const text = engraving('depth 0.4 mm pitch 0.15 mm');
        const finding = await one(text, 'coarse-pitch');
        // 2 exp(-2 pi^2 / 16) with a spot of four sigma.
        expect(finding.message).toContain('ripple by 58 %');
        expect(words(text, finding)).toBe('0.15 mm');
        await expectMended(text, finding);
    });
    it('is silent for a good pitch, for lines too fine to see, and without a spot', async () => {
        await silent(engraving('depth 0.4 mm pitch 0.1 mm'), 'coarse-pitch');
        await silent(engraving('depth 0.4 mm pitch 0.08 mm').replace('spot 0.15 mm', 'spot 0.08 mm'), 'coarse-pitch');
        await silent(engraving('depth 0.4 mm pitch 0.15 mm').replace('spot 0.15 mm', ''), 'coarse-pitch');
    });
});

describe('fine-pitch', () => {
    it('a pitch that only costs time, with the time', async () => {
        const text = engraving('depth 0.4 mm pitch 0.02 mm');
        const finding = await one(text, 'fine-pitch');
        expect(finding.severity).toBe('hint');
        expect(finding.message).toContain('min');
        await expectMended(text, finding);
    });
    it('is silent for a middling pitch, and for one that is worked out', async () => {
        await silent(engraving('depth 0.4 mm pitch 0.06 mm'), 'fine-pitch');
        await silent(engraving('depth 0.4 mm'), 'fine-pitch');
    });
});

describe('beyond-machine', () => {
    it('more power than there is', async () => {
        const text = engraving('depth 0.4 mm power 60 W');
        const finding = await one(text, 'beyond-machine');
        expect(finding).toMatchObject({ severity: 'error', message: '60 W is more than the 45 W of shed.' });
        await expectMended(text, finding);
    });
    it('less power than it can hold', async () => {
        const text = engraving('tone 50 % power 2 W').replace('power 45 W', 'power 45 W least power 4 W');
        const finding = await one(text, 'beyond-machine');
        expect(finding).toMatchObject({ severity: 'warning', message: '2 W is less than shed can hold (4 W).' });
        await expectMended(text, finding);
    });
    it('faster than it moves', async () => {
        const text = engraving('depth 0.2 mm speed 900 mm/s');
        const finding = await one(text, 'beyond-machine');
        expect(words(text, finding)).toBe('900 mm/s');
        await expectMended(text, finding);
    });
    it('is silent within its figures', async () =>
        silent(engraving('depth 0.2 mm power 100 % speed 600 mm/s'), 'beyond-machine'));
});

describe('depth-unreachable and settings-miss-depth', () => {
    it('too fast for any power, with what is written', async () => {
        const text = engraving('depth 3 mm speed 600 mm/s passes 1');
        const finding = await one(text, 'depth-unreachable');
        expect(finding.message).toContain('with the speed and passes that are written');
        expect(words(text, finding)).toBe('3 mm');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Solve again', expect.stringMatching(/^Ask for 0\.\d+ mm$/)]);
        expect(await expectMended(text, finding)).toBe(engraving('depth 3 mm'));
        await expectMended(text, finding, 1);
        await silent(text, 'settings-miss-depth');
    });
    it('held settings that give another depth: solved again, or taken for the wish', async () => {
        const text = engraving('depth 0.6 mm power 40 % speed 400 mm/s pitch 0.1 mm passes 2');
        const finding = await one(text, 'settings-miss-depth');
        expect(finding.fixes.map(({ title }) => title)).toEqual(['Solve again', 'Ask for 0.2 mm']);
        expect(await expectMended(text, finding)).toBe(engraving('depth 0.6 mm'));
        expect(finding.message).toMatch(/^These settings give 0\.2\d? mm ± .* mm, not 0.6 mm\.$/);
        await silent(text, 'depth-unreachable');
        await expectMended(text, finding, 1);
    });
    it('an error where what is asked for lies outside the range, a warning within it', async () => {
        const held = (depth: string) => engraving(`depth ${depth} power 40 % speed 400 mm/s pitch 0.1 mm passes 2`);
        expect((await one(held('0.6 mm'), 'settings-miss-depth')).severity).toBe('error');
        expect((await one(held('0.22 mm'), 'settings-miss-depth')).severity).toBe('warning');
    });
    it('held settings that do not come through, of an engraving and of a cut', async () => {
        const relief = 'art flag inverse within grown 6 mm mirror depth through power 40 % speed 600 mm/s passes 1 air off';
        const veneer =
            'coupon maple-06 on shed { pitch 0.1 mm burn 40 % at 400 mm/s gives 0.07 mm burn 60 % at 300 mm/s gives 0.2 mm burn 80 % at 250 mm/s gives 0.37 mm burn 90 % at 250 mm/s gives 0.42 mm }';
        const text = inlayRecipe({ relief }).replace('recipe tray', `${veneer}\nrecipe tray`);
        const finding = await one(text, 'settings-miss-depth');
        expect(finding.message).toMatch(/^These settings go 0\.0\d+ mm \(0 mm to 0\.\d+ mm\) deep, not through 0.6 mm\.$/);
        await expectMended(text, finding);
        const cut = recipe(`${walnut}\n cut rim on b { circle 60 mm power 40 % speed 300 mm/s passes 1 air on }`);
        expect(words(cut, await one(cut, 'settings-miss-depth'))).toBe('cut');
        await silent(
            cut.replace('power 40 % speed 300 mm/s passes 1', 'power 95 % speed 3 mm/s passes 4'),
            'settings-miss-depth',
        );
    });
    it('held settings that dig where only a tone is wanted, or give another tone', async () => {
        const tone = (settings: string) => engraving(`tone 80 % ${settings} passes 1 pitch 0.1 mm`);
        expect((await one(tone('power 80 % speed 300 mm/s'), 'settings-miss-depth')).message).toMatch(/^These settings dig 0\.3/);
        const pale = tone('power 2 % speed 600 mm/s');
        expect((await one(pale, 'settings-miss-depth')).message).toBe('These settings do not give a tone of 80 %.');
        await expectMended(pale, await one(pale, 'settings-miss-depth'));
    });
    it('without a coupon only what even the guess rules out, and as a note', async () => {
        const ash = (settings: string) =>
            recipe(
                `blank b { of ash-10 size 100 x 80 mm grain along width }\n engrave e on b { art flag depth 0.5 mm ${settings} air off }`,
            );
        const finding = await one(ash('power 10 % speed 600 mm/s passes 1'), 'settings-miss-depth');
        expect(finding.severity).toBe('info');
        expect(finding.message).toContain('(a guess: no coupon)');
        await silent(ash('power 80 % speed 400 mm/s passes 2'), 'settings-miss-depth');
    });
    it('veneer that one pass cannot burn through', async () => {
        expect(
            (
                await one(
                    inlayRecipe({
                        relief: 'art flag inverse within grown 6 mm mirror depth through passes 1 speed 600 mm/s air off',
                    }),
                    'depth-unreachable',
                )
            ).message,
        ).toContain('burnt through');
    });
    it('is silent where it is reached, and where through is more than through', async () => {
        await silent(engraving('depth 0.6 mm'), 'depth-unreachable');
        await silent(engraving('depth 0.67 mm power 80 % speed 300 mm/s passes 2 pitch 0.1 mm'), 'settings-miss-depth');
        await silent(
            inlayRecipe({ relief: 'art flag inverse within grown 6 mm mirror depth through power 100 % speed 40 mm/s air off' }),
            'depth-unreachable',
        );
    });
});

describe('no-coupon and outside-coupon', () => {
    it('a guess is said once for each material', async () => {
        const text = recipe(
            'blank b { of ash-10 size 100 x 80 mm }\n engrave e on b { art flag depth 1 mm air off }\n engrave f on b { art flag depth 0.5 mm air off }',
        );
        expect(await one(text, 'no-coupon')).toMatchObject({ severity: 'info' });
        await silent(text, 'outside-coupon');
    });
    it('a dose beyond the burnt squares', async () => {
        const text = engraving('depth 1.2 mm passes 1');
        const finding = await one(text, 'outside-coupon');
        expect(finding.severity).toBe('info');
        expect(finding.message).toMatch(
            /^e is burnt with [\d.]+ J\/mm² a pass, and the squares of the coupon on walnut-12 with [\d.]+ to [\d.]+ J\/mm²: /,
        );
        expect(finding.related).toHaveLength(1);
    });
    it('is silent within the coupon, and for a mere tone', async () => {
        await silent(engraving('depth 0.3 mm'), 'outside-coupon');
        await silent(engraving('depth 0.3 mm'), 'no-coupon');
        await silent(
            recipe('blank b { of ash-10 size 100 x 80 mm }\n engrave e on b { art flag tone 50 % air off }'),
            'no-coupon',
        );
    });
});

describe('stale-coupon', () => {
    const dated = (burnt: string, serviced: string, bought = '') =>
        engraving('depth 0.4 mm')
            .replace('pitch 0.10 mm', `pitch 0.10 mm ${burnt}`)
            .replace('spot 0.15 mm', `spot 0.15 mm ${serviced}`)
            .replace('thickness 12 mm +- 0.3 mm', `thickness 12 mm +- 0.3 mm ${bought}`);

    it('a laser that was serviced since', async () => {
        const text = dated('burnt 2026-05-02', 'serviced 2026-04-01 serviced 2026-06-01 "new lens"');
        const finding = await one(text, 'stale-coupon');
        expect(finding).toMatchObject({
            severity: 'warning',
            message:
                'The coupon of walnut-12 was burnt on 2026-05-02; shed was serviced on 2026-06-01 (new lens), so it may burn otherwise now. Burn one square of it again: where that comes out as predicted, set `burnt` to that day, else burn a new coupon.',
        });
        expect(words(text, finding)).toBe('0.4 mm');
        expect(finding.related.map(({ where }) => text.slice(where.offset, where.offset + where.length))).toEqual([
            'serviced 2026-06-01 "new lens"',
            'burnt 2026-05-02',
        ]);
    });
    it('another lot in the rack', async () => {
        const finding = await one(dated('burnt 2026-05-02', '', 'bought 2026-05-03'), 'stale-coupon');
        expect(finding).toMatchObject({ severity: 'info' });
        expect(finding.message).toContain('was bought on 2026-05-03, so it is another lot.');
    });
    it('is silent for a coupon burnt since, for days that are not written, and for days that are none', async () => {
        await silent(dated('burnt 2026-06-01', 'serviced 2026-06-01 "new lens"', 'bought 2026-05-03'), 'stale-coupon');
        await silent(dated('', 'serviced 2026-06-01'), 'stale-coupon');
        await silent(dated('burnt 2026-05-02', ''), 'stale-coupon');
        const none = dated('burnt 2026-05-02', 'serviced 2026-06-31');
        await silent(none, 'stale-coupon');
        expect(words(none, await one(none, 'impossible-value'))).toBe('2026-06-31');
    });
});

describe('power-curve-falls', () => {
    const set = (lines: string) => engraving('depth 0.4 mm').replace('spot 0.15 mm', `spot 0.15 mm ${lines}`);

    it('a line that gives less than one below it', async () => {
        const text = set('set 30 % gives 12 W set 40 % gives 11 W');
        const finding = await one(text, 'power-curve-falls');
        expect(words(text, finding)).toBe('set 40 % gives 11 W');
        await expectMended(text, finding);
    });
    it('is silent for a curve that rises', async () =>
        silent(set('set 30 % gives 8 W set 60 % gives 22 W'), 'power-curve-falls'));
    it('what is beyond the machine is told in settings', async () => {
        const text = engraving('tone 50 % power 5 %').replace('spot 0.15 mm', 'spot 0.15 mm least power 4 W set 20 % gives 4 W');
        expect(await expectMended(text, await one(text, 'beyond-machine'))).toContain('power 20 %');
    });
});

describe('out-of-focus', () => {
    const by = (word: string, body = 'depth 2 mm') => engraving(body).replace('spot 0.15 mm', `spot 0.15 mm focus ${word}`);

    it('a pocket deeper than the Rayleigh range, on a laser that says nothing of its focus', async () => {
        // pi 0.075^2 / (1.2 x 0.0106) = 1.39 mm.
        const text = engraving('depth 2 mm passes 8');
        const finding = await one(text, 'out-of-focus');
        expect(finding).toMatchObject({ severity: 'info' });
        expect(finding.message).toBe(
            'At 2 mm the spot is 1.8 times as wide (the focus reaches 1.39 mm): the machine file lowers it before pass 5, if shed can.',
        );
        expect(finding.fixes.map(({ title }) => title)).toEqual([
            'shed moves its focus by itself',
            'The focus of shed is lowered by hand',
        ]);
        expect(await expectMended(text, finding)).toContain('focus driven');
        expect(await expectMended(text, finding, 1)).toContain('focus by-hand');
    });
    it('a fixed focus', async () => {
        const finding = await one(by('fixed'), 'out-of-focus');
        expect(finding).toMatchObject({ severity: 'warning', related: [{ message: 'The focus is said to be fixed here.' }] });
        expect(finding.message).toContain('walls lean');
    });
    it('fewer passes than the focus has steps', async () => {
        const text = by('driven', 'depth 3 mm passes 2');
        const finding = await one(text, 'out-of-focus');
        expect(finding.message).toContain('it should be lowered 2 times between passes, and there are 2.');
        expect(words(text, finding)).toBe('passes 2');
        // Three would do for the focus; one-heavy-pass wants each of them light, and both offer the same.
        expect(await expectMended(text, finding)).toContain('passes 12');
    });
    it('is silent above it, where the focus follows, where a step tells of it, and for a mere tone', async () => {
        await silent(engraving('depth 1.3 mm'), 'out-of-focus');
        await silent(by('driven'), 'out-of-focus');
        await silent(by('by-hand'), 'out-of-focus');
        await silent(by('fixed', 'tone 50 %'), 'out-of-focus');
        const told = `${walnut}\n do "lower the focus half way" engrave e on b { art flag depth 2 mm air off }`;
        await silent(recipe(told), 'out-of-focus');
    });
});

describe('short-overtravel', () => {
    const by = (over: string, body: string) => engraving(body).replace('spot 0.15 mm', `spot 0.15 mm overtravel ${over}`);
    const held = 'power 80 % speed 400 mm/s passes 2';

    it('a written speed that wants more room than there is', async () => {
        const text = by('3 mm', `depth 0.5 mm ${held}`);
        const finding = await one(text, 'short-overtravel');
        // 400^2 / 12000 = 13.3 mm; over 3 mm the head gets to sqrt(36000) = 190 mm/s.
        expect(finding).toMatchObject({
            severity: 'warning',
            message:
                'e at 400 mm/s needs 13.33 mm to run up, and the overtravel is 3 mm: the head is only 190 mm/s there, so its lines begin with 2.1 times the dose.',
        });
        expect(words(text, finding)).toBe('400 mm/s');
        expect(await expectMended(text, finding)).toContain('overtravel 13.4 mm');
        // Held settings would dig deeper at a slower speed.
        expect(finding.fixes).toHaveLength(1);
        const free = text.replace(' passes 2', '');
        expect(await expectMended(free, await one(free, 'short-overtravel'), 1)).toContain('speed 189 mm/s');
    });
    it('no overtravel at all', async () => {
        const finding = await one(by('0 mm', `depth 0.5 mm ${held}`), 'short-overtravel');
        expect(finding.message).toContain('the head is at rest there');
        expect(finding.fixes).toHaveLength(1);
    });
    it('a solved speed stays below it, and the time that costs is told', async () => {
        const text = by('3 mm', 'depth 0.3 mm passes 4');
        const finding = await one(text, 'short-overtravel');
        expect(finding).toMatchObject({ severity: 'hint' });
        expect(finding.message).toBe(
            'e is held to 189 mm/s, since shed has only 3 mm of overtravel to run up; 600 mm/s would want 30 mm.',
        );
        expect(await expectMended(text, finding)).toContain('overtravel 30 mm');
    });
    it('is silent with room enough, with none written, and for cuts', async () => {
        await silent(by('14 mm', `depth 0.5 mm ${held}`), 'short-overtravel');
        await silent(engraving(`depth 0.5 mm ${held}`), 'short-overtravel');
        await silent(by('30 mm', 'depth 0.3 mm passes 4'), 'short-overtravel');
        const cut = recipe(`${walnut}\n cut rim on b { circle 60 mm power 95 % speed 300 mm/s air on }`);
        await silent(cut.replace('spot 0.15 mm', 'spot 0.15 mm overtravel 1 mm'), 'short-overtravel');
    });
});

describe('check-disagrees', () => {
    const checked = (range: string) =>
        recipe(`${walnut}\n engrave e on b { art flag depth 0.6 mm air off }\n check e { depth ${range} }`);
    it('a range beside the depth', async () => {
        const text = checked('0.40 .. 0.50 mm');
        const finding = await one(text, 'check-disagrees');
        expect(words(text, finding)).toBe('0.40 .. 0.50 mm');
        expect(await expectMended(text, finding)).toContain('0.55 .. 0.65 mm');
    });
    it('answers in the unit of the check', async () => {
        const text = checked('0.015 .. 0.020 in');
        expect(await expectMended(text, await one(text, 'check-disagrees'))).toMatch(/depth 0\.0211 \.\. 0\.0261 in/);
    });
    it('is silent around it', async () => {
        await silent(checked('0.55 .. 0.65 mm'), 'check-disagrees');
        await silent(checked('0.6 mm'), 'check-disagrees');
    });
});
