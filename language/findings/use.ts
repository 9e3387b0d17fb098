import type { LangiumDocument } from 'langium';
import { UriUtils } from 'langium';
import type { Finding } from '../../shared/recipe/finding';
import { nearest } from '../../shared/recipe/nearest';
import { type Message, phrase } from '../../shared/recipe/phrase';
import { type Entry, type File, isFile, type Use } from '../generated/ast';
import { whereOf, whereOfPart } from '../lowering/places';
import { setOfNames } from '../names/taken';
import { isRecipeFile, type UsedFile, usedUri } from '../names/used-files';
import type { KerfServices } from '../services';
import { removal, replaceWith, say } from './say';
import { documentsReferredTo } from './unused-names';

/** Files that are used but not there, used in a circle, used twice or for nothing, and names that two of them have. */
export function* useFindings(document: LangiumDocument, services: KerfServices): Iterable<Finding> {
    const file = document.parseResult.value;
    if (!isFile(file)) return;
    const used = services.names.UsedFiles.of(document);
    const seen = new Set<string>();
    for (const use of file.uses) {
        if (use.path === undefined) continue;
        const target = usedUri(use, document.uri);
        const key = target?.toString() ?? '';
        if (seen.has(key)) yield said(use, 'duplicate-name', phrase`"${use.path}" is used already.`, true);
        else if (target?.toString() === document.uri.toString())
            yield said(use, 'use-cycle', phrase`A file cannot use itself.`, true);
        else yield* ofTarget(use, document, services, used);
        seen.add(key);
    }
    yield* sameNames(document, used);
    yield* takenAnew(file, document, used);
}

/** A name of a used file that this file gives to something of its own: whoever names it here means the one here. */
function* takenAnew(file: File, document: LangiumDocument, used: readonly UsedFile[]): Iterable<Finding> {
    const there = new Map<string, UsedFile>();
    for (const each of used) {
        for (const entry of (each.document?.parseResult.value as File | undefined)?.entries ?? []) {
            const key = keyOf(entry);
            if (key !== undefined && each.document !== document && !there.has(key)) there.set(key, each);
        }
    }
    const seen = new Set<string>();
    for (const entry of file.entries) {
        const key = keyOf(entry);
        const other = key === undefined || seen.has(key) ? undefined : there.get(key);
        if (key === undefined || other === undefined) continue;
        seen.add(key);
        const { name } = entry as { name: string };
        const where = whereOfPart(entry, 'name');
        const from = UriUtils.relative(UriUtils.dirname(document.uri), other.uri);
        const message = phrase`"${from}" has \`${name}\`, too: here this one is meant, and coupons and runs of the other do not count for it.`;
        yield say('duplicate-name', {
            severity: 'warning',
            message,
            where,
            fixes: [replaceWith(where, `${name}-2`, phrase`Call it \`${name}-2\``)],
        });
    }
}

/** By what two things would be the same for whoever names them: boards and veneers share their names. */
function keyOf(entry: Entry): string | undefined {
    const { name } = entry as { name?: string };
    return name === undefined || entry.$type === 'Shop' ? undefined : `${setOfNames(entry)} ${name}`;
}

function* ofTarget(use: Use, document: LangiumDocument, services: KerfServices, used: readonly UsedFile[]): Iterable<Finding> {
    const target = usedUri(use, document.uri);
    const { LangiumDocuments } = services.shared.workspace;
    const there = target && LangiumDocuments.getDocument(target);
    if (target === undefined || there === undefined || !isRecipeFile(target)) {
        const others = LangiumDocuments.all
            .map((other) => UriUtils.relative(UriUtils.dirname(document.uri), other.uri))
            .toArray();
        const meant = nearest(use.path, others);
        const where = whereOfPart(use, 'path');
        const fixes = meant === undefined ? [] : [replaceWith(where, `"${meant}"`, phrase`Change to "${meant}"`, true)];
        const why =
            target !== undefined && !isRecipeFile(target)
                ? phrase`is no recipe file: its name does not end in .kerf`
                : phrase`is not there`;
        const message =
            use.path.trim() === ''
                ? phrase`Between the quotes comes a path, such as \`"workshop.kerf"\`.`
                : phrase`"${use.path}" ${why}.`;
        yield say('use-missing', { message, where, fixes });
        return;
    }
    const back = services.names.UsedFiles.of(there).find(({ uri }) => uri.toString() === document.uri.toString());
    if (back !== undefined) {
        yield said(
            use,
            'use-cycle',
            phrase`"${use.path}" uses this file in turn. One of the two should hold what both need.`,
            false,
        );
    }
    const needed = documentsReferredTo(document);
    const brings = [there, ...used.filter(({ through }) => through[0] === use).map((each) => each.document)];
    const asksInVain = document.references.some((reference) => reference.error !== undefined);
    const unnamed = brings.some((each) => each !== undefined && countsUnnamed(each));
    if (!asksInVain && !unnamed && !brings.some((each) => each !== undefined && needed.has(each))) {
        yield { ...said(use, 'unused-name', phrase`Nothing of "${use.path}" is used here.`, true), severity: 'hint' };
    }
}

/** Whether it holds what takes effect without being named: coupons, runs, or the shop. */
function countsUnnamed(document: LangiumDocument): boolean {
    const file = document.parseResult.value;
    return (
        isFile(file) &&
        file.entries.some(({ $type }) => $type === 'Coupon' || $type === 'Run' || $type === 'Order' || $type === 'Shop')
    );
}

function said(use: Use, rule: string, message: Message, removable: boolean): Finding {
    const fixes = removable ? [removal(whereOf(use), phrase`Remove this line`)] : [];
    return say(rule, { severity: 'warning', message, where: whereOfPart(use, 'path'), fixes });
}

/** A name that two used files give to things of one kind: the nearer file wins, and says so. */
function* sameNames(document: LangiumDocument, used: readonly UsedFile[]): Iterable<Finding> {
    const first = new Map<string, UsedFile>();
    for (const each of used) {
        const outermost = each.through[0];
        for (const entry of (each.document?.parseResult.value as File | undefined)?.entries ?? []) {
            const name = (entry as { name?: string }).name;
            if (name === undefined || entry.$type === 'Recipe') continue;
            const key = `${entry.$type} ${name}`;
            const earlier = first.get(key);
            if (earlier === undefined) first.set(key, each);
            else if (earlier.document !== each.document && outermost !== undefined) {
                const from = UriUtils.relative(UriUtils.dirname(document.uri), earlier.uri);
                const here = UriUtils.relative(UriUtils.dirname(document.uri), each.uri);
                const message = phrase`"${from}" and "${here}" both have \`${name}\`; the one of "${from}" is meant.`;
                yield say('duplicate-name', { severity: 'warning', message, where: whereOfPart(outermost, 'path') });
            }
        }
    }
}
