import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readKeptState } from '../../extension/bench/kept-state';
import { readFromBench, readToBench } from '../../extension/bench/messages';

const where = { uri: 'file:///w/tray.kerf', offset: 12, length: 4 };

describe('messages from the bench view', () => {
    test.each([
        { type: 'ready' },
        { type: 'reveal', where, focus: true },
        { type: 'recipe', name: 'heron-tray' },
        { type: 'explain', rule: 'veneer-not-mirrored' },
        { type: 'section', ticket: 3, frame: 0, blank: 'tray', y: 61.5 },
        { type: 'round', ticket: 4, frame: 2, blank: 'tray', hidden: ['fill', 'tape'] },
        { type: 'column', ticket: 3, frame: 0, blank: 'tray', x: 12, y: 61.5 },
        { type: 'write', where, textVersion: 3, text: '0.6 mm' },
        { type: 'press', ticket: 2, step: 4 },
        { type: 'stop-press' },
    ])('$type is understood', (message) => {
        expect(readFromBench(message)).toEqual(message);
    });

    test.each([
        ['no message', null],
        ['a list', [{ type: 'ready' }]],
        ['an unknown kind', { type: 'run', command: 'rm' }],
        ['a place without an offset', { type: 'reveal', where: { uri: 'file:///w', length: 1 } }],
        ['a negative offset', { type: 'reveal', where: { ...where, offset: -1 } }],
        ['a rule that is no word', { type: 'explain', rule: '../../secret' }],
        ['a recipe that is no name', { type: 'recipe', name: '"; drop' }],
        ['a height that is no number', { type: 'section', ticket: 1, frame: 0, blank: 'tray', y: 'x' }],
        ['a height without end', { type: 'section', ticket: 1, frame: 0, blank: 'tray', y: Number.POSITIVE_INFINITY }],
        ['a number to write without its version', { type: 'write', where, text: '0.6 mm' }],
        ['a number to write that is a novel', { type: 'write', where, textVersion: 3, text: 'x'.repeat(5000) }],
        ['a press of half a step', { type: 'press', ticket: 2, step: 0.5 }],
        ['a press without a ticket', { type: 'press', step: 4 }],
        ['a place without a height', { type: 'column', ticket: 1, frame: 0, blank: 'tray', x: 1 }],
        ['a place that is nowhere', { type: 'column', ticket: 1, frame: 0, blank: 'tray', x: Number.NaN, y: 1 }],
        ['half a frame', { type: 'section', ticket: 1, frame: 0.5, blank: 'tray', y: 1 }],
    ])('%s is dropped', (_what, message) => {
        expect(readFromBench(message)).toBeUndefined();
    });

    test('nothing that is sent along comes through', () => {
        expect(readFromBench({ type: 'ready', extra: 1 })).toEqual({ type: 'ready' });
    });

    test('anything at all is answered without a throw', () => {
        fc.assert(
            fc.property(fc.anything(), (message) => {
                readFromBench(message);
                readToBench(message);
                readKeptState(message);
            }),
        );
    });
});

describe('messages to the bench view', () => {
    test('a picture of another version is dropped', () => {
        const view = { recipe: 'tray', frames: [], paths: {}, pieces: {} };
        expect(readToBench({ type: 'picture', view: { ...view, version: 2 } })).toBeUndefined();
        expect(readToBench({ type: 'picture', view: { ...view, version: 1, frames: undefined } })).toBeUndefined();
        expect(readToBench({ type: 'picture', view: { ...view, version: 1 } })).toBeDefined();
    });

    test.each([
        { type: 'pressing', ticket: 2, part: 0.4 },
        { type: 'pressed', ticket: 2, press: null },
        { type: 'pressed', ticket: 2, press: { good: true } },
    ])('$type is understood', (message) => {
        expect(readToBench(message)).toEqual(message);
    });

    test.each([
        ['a part that is no number', { type: 'pressing', ticket: 2, part: Number.NaN }],
        ['a part of nothing that was asked', { type: 'pressing', part: 0.4 }],
        ['a press that is a word', { type: 'pressed', ticket: 2, press: 'good' }],
        ['a press that is missing', { type: 'pressed', ticket: 2 }],
        ['a press with a negative ticket', { type: 'pressed', ticket: -1, press: null }],
    ])('%s is dropped', (_what, message) => {
        expect(readToBench(message)).toBeUndefined();
    });
});

describe('kept state', () => {
    test('what the maker had chosen comes back', () => {
        const kept = {
            uri: 'file:///w/tray.kerf',
            recipe: 'heron-tray',
            frame: 'engrave Engrave pocket 1',
            blank: 'tray',
            windows: { tray: { x: 0.4, y: 0.6, zoom: 3 } },
            cuts: { tray: 61.5 },
            toolpath: 0,
            presses: [3, 5],
            start: '2026-11-26T08:00',
            scroll: 420,
        };
        expect(readKeptState(structuredClone(kept))).toEqual(kept);
    });

    test.each([
        ['a window that is no closer than the whole', { windows: { tray: { x: 0, y: 0, zoom: 0.5 } } }],
        ['a window that is nowhere', { windows: { tray: { x: Number.NaN, y: 0, zoom: 2 } } }],
        ['a blank that is no name', { cuts: { '<script>': 1 } }],
        ['a cut that is a word', { cuts: { tray: '61' } }],
        ['half a step', { toolpath: 0.5 }],
        ['presses that are one', { presses: 3 }],
        ['a page above itself', { scroll: -1 }],
    ])('%s is left out', (_what, wrong) => {
        expect(readKeptState({ uri: 'file:///w/tray.kerf', ...wrong })).toEqual({ uri: 'file:///w/tray.kerf' });
    });

    test('what is not understood is left out, the rest stays', () => {
        expect(readKeptState({ uri: 'file:///w/tray.kerf', recipe: 7, frame: 'wait Wait 12 h 1', blank: 'a b' })).toEqual({
            uri: 'file:///w/tray.kerf',
            frame: 'wait Wait 12 h 1',
        });
    });
});
