import { describe, expect, expectTypeOf, it } from 'vitest';
import type { RecipeServer } from '../../extension/server';
import type { Checklist, WrittenAnswer } from '../../shared/view/protocol';
import { editorRequests, notifications, requests } from '../../shared/view/requests';

// Never called: what stands in it is for the type checker, which fails when a line below "@ts-expect-error" compiles.
async function ask(server: RecipeServer): Promise<void> {
    const uri = 'file:///heron-tray.kerf';
    expectTypeOf(await server.ask(requests.checklist, { uri })).toEqualTypeOf<Checklist | undefined>();
    expectTypeOf(await server.ask(requests.run, {} as never)).toEqualTypeOf<WrittenAnswer | undefined>();
    // @ts-expect-error a field that there is not
    await server.ask(requests.checklist, { uri, typo: 1 });
    // @ts-expect-error a field too few
    await server.ask(requests.toolpath, { uri });
    // @ts-expect-error an answer is not chosen by who asks
    await server.ask<string>(requests.checklist, { uri });
    // @ts-expect-error a name is no request
    await server.ask('kerfbook/checklist', { uri });
}

describe('requests', () => {
    it('are typed by their declaration', () => expect(ask).toBeTypeOf('function'));

    it('have a name of their own each', () => {
        const all = [requests, editorRequests, notifications].flatMap((some) => Object.values(some).map(({ method }) => method));
        expect(new Set(all).size).toBe(all.length);
        expect(Object.entries(requests).filter(([name, { method }]) => method !== `kerfbook/${name}`)).toEqual([]);
    });
});
