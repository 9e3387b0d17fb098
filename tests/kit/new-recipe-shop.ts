import { readFileSync } from 'node:fs';
import { EmptyFileSystem } from 'langium';
import { LocalAsker } from '../../server/engine/asker';
import { newRecipe, type Shop } from '../../server/starting/new-recipe';
import { withNewFiles } from '../../server/starting/with-new-files';
import { openWorkshop } from '../../server/workshop/open-workshop';
import type { NewRecipeAnswer, NewRecipeParams } from '../../shared/view/new-recipe';

export const folder = 'file:///shop';

/** A shop in memory in which recipes are begun. Files by their paths in it. */
export async function shopWith(files: Readonly<Record<string, string | Uint8Array>>): Promise<Shop> {
    const entries = Object.entries(files).map(([path, content]) => [`${folder}/${path}`, content] as const);
    const texts = new Map(entries.flatMap(([uri, content]) => (typeof content === 'string' ? [[uri, content] as const] : [])));
    const bytes = new Map(
        entries.map(([uri, content]) => [uri, typeof content === 'string' ? new TextEncoder().encode(content) : content]),
    );
    const missing = async () => ({ problem: 'missing' as const, version: 'missing' });
    const source = withNewFiles({ fileSystem: EmptyFileSystem, read: missing }, texts, bytes);
    const asker = new LocalAsker();
    const uris = [...texts.keys()].filter((uri) => uri.endsWith('.kerf'));
    const { workshop } = await openWorkshop(source, uris, undefined, asker);
    return { workshop, documents: workshop.services.shared.workspace.LangiumDocuments.all.toArray(), source, asker };
}

export type Chosen = Pick<NewRecipeParams, 'technique' | 'board' | 'laser'> & Partial<NewRecipeParams>;

export function begin(shop: Shop, chosen: Chosen): Promise<NewRecipeAnswer> {
    return newRecipe({ folder, files: [], title: 'Low water', ...chosen }, shop);
}

/** The answer's files, the first of which is the recipe. Throws where there is none. */
export function filesOf(answer: NewRecipeAnswer): Record<string, string> {
    if ('problem' in answer) throw new Error(answer.problem);
    return Object.fromEntries(answer.files.map((file) => [file.path, 'text' in file ? file.text : file.base64]));
}

export const samples = (path: string): string => readFileSync(new URL(`../../samples/${path}`, import.meta.url), 'utf8');
