import { readFileSync } from 'node:fs';
import { AstUtils } from 'langium';
import { expect, it } from 'vitest';
import { treeOf } from '../../language/names/tree';
import { open } from './services';

it('a tree laid out flat has every node and every name, in the order of the text', async () => {
    const text = readFileSync(new URL('../../samples/workshop.kerf', import.meta.url), 'utf8');
    const recipe = readFileSync(new URL('../../samples/heron-tray.kerf', import.meta.url), 'utf8');
    const root = (await open(`${recipe}\n${text}`)).parseResult.value;
    const all = AstUtils.streamAst(root).toArray();
    const { nodes, references } = treeOf(root);
    expect(nodes.length).toBe(all.length);
    expect(nodes.every((node, index) => node === all[index])).toBe(true);
    const named = all.flatMap((node) => AstUtils.streamReferences(node).toArray());
    const shown = (each: (typeof named)[number]) =>
        `${each.container.$type}.${each.property}[${each.index}] ${each.reference.$refText}`;
    expect(references.map(shown)).toEqual(named.map(shown));
});
