import { createHash } from 'node:crypto';
import tabletScript from 'tablet-script';
import { describe, expect, it } from 'vitest';
import { clockWords, type KeptRun, readKept, typedNumber } from '../../extension/tablet/kept-run';
import { runText } from '../../extension/tablet/run-text';
import { escapeMarkup } from '../../shared/sheets/escape';
import type { TabletJob } from '../../shared/tablet/tablet-job';
import { tabletPage } from '../../shared/tablet/tablet-page';
import { tabletWords } from '../../shared/tablet/tablet-words';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { coupon, shop } from '../kit/shop';

const recipe = (title: string, about = ''): string => `${shop}
${coupon('ash-10', 'shed')}
recipe thing ${JSON.stringify(title)} {
  issue 3
  laser shed
  blank b { of ash-10 size 100 x 80 mm grain along width }
  engrave pocket on b { circle 30 mm depth 0.5 mm ${about} }
  check pocket { depth 0.45 .. 0.55 mm }
  wait 2 h "the dust settles"
}`;

function jobIn(page: string): TabletJob {
    return JSON.parse(/<script type="application\/json" id="job">(.*)<\/script>/.exec(page)![1]!);
}

describe('the page for a tablet', () => {
    it('runs its own script and nothing else', async () => {
        const { text } = tabletPage(await planOf(recipe('Plate')), tabletScript, undefined);
        const script = /<script>([\s\S]*?)<\/script>/.exec(text)![1]!;
        const hash = `sha256-${createHash('sha256').update(script).digest('base64')}`;
        expect(text).toContain(`script-src '${hash}';`);
        expect(text.indexOf('Content-Security-Policy')).toBeLessThan(text.indexOf('<style>'));
        expect(text).not.toMatch(/https?:|<link|<img|src=/);
    });

    it('shows whatever a recipe says as text', async () => {
        const hostile = '</script><script>alert(1)</script>';
        const { text } = tabletPage(await planOf(recipe(hostile, `about ${JSON.stringify(hostile)}`)), tabletScript, 'ab"<');
        expect(text.match(/<script/g)).toHaveLength(2);
        expect(text.match(/<\/script>/g)).toHaveLength(2);
        expect(jobIn(text)).toMatchObject({ title: hostile, mark: 'ab"<' });
    });

    it('asks for what a check wants beside it, and for a depth that none asks for beside its step', async () => {
        const { steps } = jobIn(tabletPage(await planOf(recipe('Plate')), tabletScript, undefined).text);
        expect(steps.map(({ asked }) => asked.map(({ what, step, unit }) => `${what} ${step} ${unit}`))).toEqual([
            ...[[], ['depth pocket mm'], []],
        ]);
        expect(steps[1]!.asked[0]).toMatchObject({ low: expect.closeTo(0.45), high: expect.closeTo(0.55) });
        expect(steps[2]).toMatchObject({ wait: 7200 });
        const without = recipe('Plate').replace(/ {2}check.*\n/, '');
        const [first] = jobIn(tabletPage(await planOf(without), tabletScript, undefined).text).steps;
        expect(first!.asked).toMatchObject([{ what: 'depth', step: 'pocket', unit: 'mm' }]);
    });

    it('asks for a tone as a maker says it, in per cent', async () => {
        const toned = recipe('Plate').replace('depth 0.5 mm', 'tone 80 %').replace('depth 0.45 .. 0.55 mm', 'tone 70 .. 90 %');
        const { steps } = jobIn(tabletPage(await planOf(toned), tabletScript, undefined).text);
        expect(steps[1]!.asked).toMatchObject([{ what: 'tone', unit: '%', low: expect.closeTo(70), high: expect.closeTo(90) }]);
    });

    it.each(goodSamples)('%s has each of its steps on it, and its cautions', async (name) => {
        const plan = await planOf(...sampleText(name));
        const { text } = tabletPage(plan, tabletScript, undefined);
        expect(text.match(/<li data-step=/g)).toHaveLength(plan.steps.length);
        const [, cautions = ''] = /class="cautions"([\s\S]*?)<\/section>/.exec(text) ?? [];
        const said = Array.from(cautions.matchAll(/<li>(.*?)<\/li>/g), ([, caution]) => caution);
        expect(said).toEqual(plan.cautions.map(escapeMarkup));
        expect(cautions.split('<details>')[0]!.match(/<li>/g) ?? []).toHaveLength(Math.min(6, plan.cautions.length));
        const mirrored = plan.steps.filter(({ laser }) => laser?.mirrorAxis !== undefined);
        expect(text.match(/>MIRRORED</g) ?? []).toHaveLength(mirrored.length);
    });
});

describe('what the page keeps', () => {
    const job: TabletJob = {
        ...{ recipe: 'thing', title: 'Plate', revision: 3, laser: 'shed', mark: '0123abcd' },
        ...{ kinds: { pocket: 'engrave' }, words: tabletWords() },
        steps: [
            {
                id: 'engrave pocket',
                label: 'Engrave pocket',
                asked: [],
                burnt: { step: 'pocket', words: 'of ash-10 80 % at 300 mm/s' },
            },
            {
                ...{ id: 'check pocket', label: 'Check pocket' },
                asked: [{ step: 'pocket', what: 'depth', wish: '0.5 mm', unit: 'mm', low: 0.45, high: 0.55 }],
            },
        ],
    };
    const kept: KeptRun = {
        ...{ file: '2026-12-01-thing-abcde.kerf', date: '2026-12-01', note: 'Flush "at once".' },
        steps: {
            'engrave pocket': { at: 1, burnt: { step: 'pocket', words: 'of ash-10 80 % at 300 mm/s' }, photos: 'IMG_1.jpg' },
            'check pocket': { figures: { 0: '0,52' }, note: 'a little\ndeep' },
        },
    };

    it('becomes a run as the language writes it, each note with its step', () => {
        expect(runText(job, kept)).toBe(
            [
                ...['run thing 2026-12-01 {', '  of plan 0123abcd', '  issue 3', '  laser shed'],
                '  engrave pocket of ash-10 80 % at 300 mm/s depth 0.52 mm',
                ...[
                    '  note "Flush \\"at once\\"."',
                    '  note "Engrave pocket, photos: IMG_1.jpg"',
                    '  note "Check pocket: a little deep"',
                ],
                ...['}', ''],
            ].join('\n'),
        );
    });

    it('leaves out what cannot be read, and what was burnt of a step whose tick was taken away', () => {
        const { note: _note, ...steps } = kept.steps['check pocket']!;
        const unread: KeptRun = { ...kept, note: '', steps: { 'check pocket': { ...steps, figures: { 0: 'deep' } } } };
        expect(runText(job, unread)).not.toMatch(/pocket|note/);
    });

    it('begins again where something else was kept', () => {
        const begin = (): KeptRun => ({ ...kept, note: 'new' });
        for (const text of [
            null,
            '',
            '{',
            '7',
            '{"file":1}',
            JSON.stringify({ ...kept, steps: { a: 3 } }),
            JSON.stringify({ ...kept, steps: { a: null } }),
        ])
            expect(readKept(text, begin).note, String(text)).toBe('new');
        expect(readKept(JSON.stringify(kept), begin)).toEqual(kept);
    });

    it.each([
        ['0.52', 0.52],
        ['0,5', 0.5],
        [' 12 ', 12],
        ['.5', undefined],
        ['-1', undefined],
        ['1e9', undefined],
        ['0.52 mm', undefined],
    ])('reads %j as %j', (typed, number) => expect(typedNumber(typed)).toBe(number));

    it('counts down as a clock does', () => {
        expect([9, 249, 3849, 86_400, 7 * 86_400 - 60].map(clockWords)).toEqual([
            '0:09',
            '4:09',
            '1:04:09',
            '1 d 0:00',
            '6 d 23:59',
        ]);
    });
});
