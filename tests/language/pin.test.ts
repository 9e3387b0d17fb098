import { AstUtils } from 'langium';
import { describe, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver';
import { atOnce } from '../../language/editing/late-edits';
import { type Engrave, isEngrave } from '../../language/generated/ast';
import { pinActions } from '../../language/planned/pin-actions';
import { type PlannedStep, plannedSteps } from '../../language/planned/planned-step';
import { open } from './services';

const pins = ['power 80 %', 'speed 461 mm/s', 'pitch 0.1 mm'];

function planned(text: string, begins: string, more: Partial<PlannedStep['figures']> = {}): PlannedStep {
    const offset = text.indexOf(begins);
    const whole = { uri: '', offset, length: text.indexOf('}', offset) + 1 - offset };
    return {
        recipe: 'thing',
        text: text.slice(offset, offset + whole.length),
        figures: { whole, pins, guess: false, hints: [], ...more },
    };
}

async function actions(text: string, plans: readonly PlannedStep[], at: string, only?: string[]): Promise<CodeAction[]> {
    const document = await open(text);
    const position = document.textDocument.positionAt(text.indexOf(at));
    return pinActions(
        document,
        {
            textDocument: { uri: document.uri.toString() },
            range: { start: position, end: position },
            context: { diagnostics: [], ...(only === undefined ? {} : { only }) },
        },
        plans,
    ).map(atOnce);
}

/** The text once an action is taken. */
async function taken(text: string, action: CodeAction | undefined): Promise<string> {
    const document = await open(text);
    const [edits = []] = Object.values(action?.edit?.changes ?? {});
    const spans = edits.map(({ range, newText }) => ({
        from: document.textDocument.offsetAt(range.start),
        to: document.textDocument.offsetAt(range.end),
        newText,
    }));
    return spans
        .toSorted((a, b) => b.from - a.from)
        .reduce((now, { from, to, newText }) => now.slice(0, from) + newText + now.slice(to), text);
}

const recipe = (step: string): string => `recipe thing {\n  blank b { size 9 x 9 mm }\n  ${step}\n}\n`;
const lines = recipe('engrave e on b {\n    circle 5 mm\n    depth 0.5 mm // as deep as the veneer\n    air off\n  }');

describe('pinning', () => {
    it('writes each setting on a line of its own behind the depth, and leaves comments where they are', async () => {
        const [action] = await actions(lines, [planned(lines, 'engrave e')], 'circle');
        expect(action).toMatchObject({ title: `Pin the settings: ${pins.join(', ')}`, kind: 'refactor.rewrite' });
        expect(await taken(lines, action)).toBe(
            lines.replace('veneer\n', 'veneer\n    power 80 %\n    speed 461 mm/s\n    pitch 0.1 mm\n'),
        );
    });
    it('keeps a block on one line on one line', async () => {
        const text = recipe('engrave e on b { circle 5 mm depth 0.5 mm air off }');
        const [action] = await actions(text, [planned(text, 'engrave e')], 'circle');
        expect(await taken(text, action)).toBe(text.replace('0.5 mm', '0.5 mm  power 80 %  speed 461 mm/s  pitch 0.1 mm'));
    });
    it('keeps the line breaks of the file', async () => {
        const text = lines.replaceAll('\n', '\r\n');
        const [action] = await actions(text, [planned(text, 'engrave e')], 'circle');
        expect((await taken(text, action)).replaceAll('\r\n', '')).not.toContain('\n');
    });
    it('of a cut goes behind its last line', async () => {
        const text = recipe('cut rim on b {\n    circle 5 mm\n  }');
        const [action] = await actions(text, [planned(text, 'cut rim', { pins: ['power 100 %'] })], 'circle');
        expect(await taken(text, action)).toBe(text.replace('5 mm\n', '5 mm\n    power 100 %\n'));
    });
    it('says that it is a guess', async () => {
        const [action] = await actions(lines, [planned(lines, 'engrave e', { guess: true })], 'circle');
        expect(action?.title).toContain('the guessed settings (no coupon)');
    });
    it('is not offered for words that have changed since the plan', async () => {
        const plan = planned(lines, 'engrave e');
        expect(await actions(lines.replace('depth 0.5', 'depth 0.6'), [plan], 'circle')).toEqual([]);
        expect(await actions(`// above\n${lines}`, [plan], 'circle')).toHaveLength(1);
        expect(await actions(lines.replace('thing', 'other'), [plan], 'circle')).toEqual([]);
    });
    it('is offered inside the step, and where rewriting is asked for', async () => {
        const plan = [planned(lines, 'engrave e')];
        expect(await actions(lines, plan, 'blank b')).toEqual([]);
        expect(await actions(lines, plan, 'circle', ['refactor'])).toHaveLength(1);
        expect(await actions(lines, plan, 'circle', ['refactor.rewrite'])).toHaveLength(1);
        expect(await actions(lines, plan, 'circle', ['quickfix'])).toEqual([]);
        expect(await actions(lines, plan, 'circle', ['refactor.extract'])).toEqual([]);
    });
});

describe('unpinning', () => {
    it('takes all settings out, and pinning again gives the text back', async () => {
        const [pin] = await actions(lines, [planned(lines, 'engrave e')], 'circle');
        const pinned = await taken(lines, pin);
        const [unpin] = await actions(pinned, [], 'circle');
        expect(unpin?.title).toBe(`Unpin the settings: ${pins.join(', ')}`);
        expect(await taken(pinned, unpin)).toBe(lines);
    });
    it('also on one line', async () => {
        const text = recipe('engrave e on b { circle 5 mm depth 0.5 mm  power 80 %  passes 3 air off }');
        const [unpin] = await actions(text, [], 'circle');
        expect(await taken(text, unpin)).toBe(recipe('engrave e on b { circle 5 mm depth 0.5 mm air off }'));
    });
    it('is not offered where nothing else says what is wanted', async () => {
        expect(await actions(recipe('engrave e on b { circle 5 mm power 80 % speed 300 mm/s }'), [], 'circle')).toEqual([]);
        expect(await actions(recipe('cut e on b { circle 5 mm power 80 % }'), [], 'circle')).toHaveLength(1);
    });
});

describe('steps with what was planned for them', () => {
    it('of two that are alike each gets its own', async () => {
        const step = 'engrave e on b { circle 5 mm depth 1 mm }';
        const text = recipe(`${step}\n  ${step}`);
        const [one, two] = [planned(text, 'engrave e', { pins: ['one'] }), planned(text, 'engrave e', { pins: ['two'] })];
        const document = await open(text);
        const found = [...plannedSteps(document, [one, two])];
        expect(found.map(([, figures]) => figures.pins)).toEqual([['one'], ['two']]);
        const steps = AstUtils.streamAst(document.parseResult.value)
            .filter((node): node is Engrave => isEngrave(node))
            .toArray();
        expect(found.map(([each]) => each)).toEqual(steps);
    });
    it('a broken file has none, and does not throw', async () => {
        expect([...plannedSteps(await open('recipe { engrave {'), [planned(lines, 'engrave e')])]).toEqual([]);
    });
});
