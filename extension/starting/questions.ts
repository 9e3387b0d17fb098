import * as vscode from 'vscode';
import type { NewRecipeChoices, NewRecipeParams, Picked, StockChoice } from '../../shared/view/new-recipe';
import type { Technique } from '../../shared/view/techniques';
import { type Asked, choose, type Item, type } from './ask';

/** What is known of a new recipe while it is asked for. */
export type Draft = Partial<Pick<NewRecipeParams, 'technique' | 'board' | 'veneer' | 'laser' | 'art' | 'title'>> & {
    readonly artChosen?: boolean;
};

type Ask = (draft: Draft, step: number) => Promise<Asked<Draft>> | undefined;

const title = 'New Recipe';
const of = 6;

/** The questions in their order; one that has only one answer is not asked. */
export function questions(choices: NewRecipeChoices, art: readonly vscode.Uri[]): readonly Ask[] {
    return [
        (draft, step) =>
            taking(choose({ title, step, of, placeholder: 'Which technique?' }, techniques(draft)), (technique) => ({
                ...draft,
                technique,
            })),
        (draft, step) =>
            taking(
                choose(
                    { title, step, of, placeholder: 'Which board?' },
                    stock(choices.boards, 'Woods, for a board you have yet to measure'),
                ),
                (board) => ({
                    ...draft,
                    board,
                }),
            ),
        (draft, step) => {
            if (draft.technique !== 'inlay') return undefined;
            const any: Item<Picked | 'any'> = {
                label: 'The one that stands out most',
                description: 'chosen from all of them',
                value: 'any',
            };
            const items = [any, ...stock(choices.veneers, 'Woods, for a veneer you have yet to buy')];
            return taking(choose({ title, step, of, placeholder: 'Which veneer is let in?' }, items), (veneer) => {
                const { veneer: _old, ...rest } = draft;
                return veneer === 'any' ? rest : { ...rest, veneer };
            });
        },
        (draft, step) => {
            const usable = choices.lasers.filter(({ foilStops }) => foilStops || draft.technique !== 'inlay');
            const own = usable.filter(({ file }) => file !== undefined);
            if (own.length === 1) return now({ ...draft, laser: picked(own[0]!) });
            const items = stock(
                usable.map((laser) => ({ ...laser, coupons: [] })),
                'Kinds of laser, with figures of a usual one',
            );
            return taking(choose({ title, step, of, placeholder: 'Which laser?' }, items), (laser) => ({ ...draft, laser }));
        },
        (draft, step) => {
            if (draft.artChosen) return undefined;
            const items = artItems(art, draft.technique);
            if (items.length === 1) return undefined;
            return taking(choose({ title, step, of, placeholder: 'Which art?' }, items), (uri) => {
                const { art: _old, ...rest } = draft;
                return uri === 'none' ? rest : { ...rest, art: uri };
            });
        },
        (draft, step) =>
            taking(
                type(
                    { title, step, of, prompt: 'What is it called? The file is named after it.', value: draft.title ?? '' },
                    (text) =>
                        text.trim() === '' ? 'A recipe wants a name.' : text.length > 80 ? 'No more than 80 letters.' : undefined,
                ),
                (name) => ({ ...draft, title: name.trim() }),
            ),
    ];
}

function techniques({ art, artChosen }: Draft): Item<Technique>[] {
    const picture = artChosen && art !== undefined && !/\.svg$/i.test(art);
    const all: Item<Technique>[] = [
        {
            value: 'engraving',
            label: 'Plain engraving',
            description: 'colour, not depth',
            iconPath: new vscode.ThemeIcon('edit'),
        },
        {
            value: 'filled',
            label: 'Filled engraving',
            description: 'pockets flooded with tinted resin',
            iconPath: new vscode.ThemeIcon('paintcan'),
        },
        {
            value: 'inlay',
            label: 'Reverse inlay',
            description: 'veneer let into a pocket',
            iconPath: new vscode.ThemeIcon('extensions'),
        },
        {
            value: 'picture',
            label: 'Picture in greys',
            description: 'dots, from a PNG or JPEG',
            iconPath: new vscode.ThemeIcon('file-media'),
        },
    ];
    return artChosen && !picture ? all.filter(({ value }) => value !== 'picture') : all;
}

function stock(choices: readonly StockChoice[], heading: string): Item<Picked>[] {
    const item = (choice: StockChoice): Item<Picked> => ({
        label: choice.name,
        description: [choice.detail, choice.coupons.length > 0 ? `coupon on ${choice.coupons.join(', ')}` : '']
            .filter((part) => part !== '')
            .join(' · '),
        value: picked(choice),
    });
    const own = choices.filter(({ file }) => file !== undefined);
    const builtIn = choices.filter(({ file }) => file === undefined);
    return [
        ...(own.length > 0 ? [{ label: 'In the workshop', kind: vscode.QuickPickItemKind.Separator }] : []),
        ...own.map(item),
        { label: heading, kind: vscode.QuickPickItemKind.Separator },
        ...builtIn.map(item),
    ];
}

function artItems(art: readonly vscode.Uri[], technique: Technique | undefined): Item<string>[] {
    const none: Item<string> = {
        label: 'None yet',
        description: technique === 'picture' ? 'writes a picture to be replaced' : 'writes a drawing to be drawn over',
        value: 'none',
    };
    const fitting = art.filter((uri) => technique !== 'picture' || !/\.svg$/i.test(uri.path));
    return [none, ...fitting.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), value: uri.toString() }))];
}

function picked({ name, file }: Picked): Picked {
    return { name, ...(file === undefined ? {} : { file }) };
}

async function taking<T>(asked: Promise<Asked<T>>, take: (answer: T) => Draft): Promise<Asked<Draft>> {
    const result = await asked;
    return typeof result === 'string' ? result : { answer: take(result.answer) };
}

async function now(answer: Draft): Promise<Asked<Draft>> {
    return { answer };
}
