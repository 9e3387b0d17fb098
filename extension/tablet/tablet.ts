import { dayOf } from '../../shared/quantity/calendar';
import type { TabletJob, TabletStep } from '../../shared/tablet/tablet-job';
import { filled } from '../../shared/tablet/tablet-words';
import { runFileName } from '../../shared/view/run-file-name';
import { clockWords, type KeptRun, type KeptStep, keyOf, readKept, typedNumber } from './kept-run';
import { ring } from './ring';
import { runText } from './run-text';

// The script of the page for the tablet. What is shown stands in the page already (shared/tablet); this keeps, counts, rings and saves.

const SECOND = 1000;

const at = <E extends HTMLElement>(id: string): E => document.getElementById(id) as E;
const job = JSON.parse(at('job').textContent ?? '') as TabletJob;
const key = keyOf(job);
const { words } = job;
let canKeep = true;
let isSaved = false;
let run = readKept(load(), begin);

function begin(): KeptRun {
    const date = dayOf(new Date());
    const file = runFileName({ recipe: job.recipe, date }, crypto.getRandomValues(new Uint8Array(5)));
    return { ...{ file, date, note: '' }, steps: {} };
}

/** A browser may keep nothing for pages from a stick, or nothing at all: then it is said, and all else works. */
function load(): string | null {
    try {
        return localStorage.getItem(key);
    } catch {
        canKeep = false;
        return null;
    }
}

function keep(): void {
    try {
        localStorage.setItem(key, JSON.stringify(run));
    } catch {
        canKeep = false;
    }
    show();
}

function stepOf(id: string): KeptStep {
    run.steps[id] ??= {};
    return run.steps[id];
}

function say(words: string): void {
    at('say').textContent = words;
}

function tick(step: TabletStep, isDone: boolean): void {
    const kept = stepOf(step.id);
    delete kept.at;
    delete kept.ends;
    delete kept.rung;
    delete kept.burnt;
    if (isDone) {
        kept.at = Date.now();
        if (step.wait !== undefined) kept.ends = kept.at + step.wait * SECOND;
        if (step.burnt !== undefined) kept.burnt = step.burnt;
    }
    keep();
}

const cards = [...document.querySelectorAll<HTMLElement>('[data-step]')];

for (const [index, card] of cards.entries()) {
    const step = job.steps[index];
    if (step === undefined) continue;
    const box = card.querySelector<HTMLInputElement>('.tick input');
    box?.addEventListener('change', () => {
        ring.ready();
        tick(step, box.checked);
    });
    for (const field of card.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[data-asked]'))
        field.addEventListener('input', () => {
            const kept = stepOf(step.id);
            kept.figures = { ...kept.figures, [Number(field.dataset.asked)]: field.value };
            keep();
        });
    for (const name of ['note', 'photos'] as const) {
        const field = card.querySelector<HTMLInputElement>(`.${name}`);
        field?.addEventListener('input', () => {
            stepOf(step.id)[name] = field.value;
            keep();
        });
    }
}

at<HTMLTextAreaElement>('note').addEventListener('input', (event) => {
    run.note = (event.target as HTMLTextAreaElement).value;
    keep();
});

at('save').addEventListener('click', () => {
    const link = document.createElement('a');
    const file = URL.createObjectURL(new Blob([runText(job, run)], { type: 'text/plain' }));
    link.href = file;
    link.download = run.file;
    link.click();
    setTimeout(() => URL.revokeObjectURL(file), 60 * SECOND);
    say(filled(words.saved, run.file));
    isSaved = true;
    at('kept').textContent = filled(words.savedOnce, run.file);
});

at('again').addEventListener('click', () => {
    if (!confirm(words.again)) return;
    run = begin();
    fill();
    keep();
});

/** Puts what is kept into the fields. */
function fill(): void {
    at<HTMLTextAreaElement>('note').value = run.note;
    for (const [index, card] of cards.entries()) {
        const kept = run.steps[job.steps[index]?.id ?? ''] ?? {};
        for (const field of card.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[data-asked]'))
            field.value = kept.figures?.[Number(field.dataset.asked)] ?? '';
        for (const name of ['note', 'photos'] as const) {
            const field = card.querySelector<HTMLInputElement>(`.${name}`);
            if (field !== null) field.value = kept[name] ?? '';
        }
    }
}

function show(): void {
    const now = Date.now();
    let done = 0;
    for (const [index, card] of cards.entries()) {
        const step = job.steps[index];
        if (step === undefined) continue;
        const kept = run.steps[step.id] ?? {};
        const isDone = kept.at !== undefined;
        if (isDone) done++;
        const box = card.querySelector<HTMLInputElement>('.tick input');
        if (box !== null) box.checked = isDone;
        card.classList.toggle('done', isDone);
        showClock(card, step, kept, now);
        for (const field of card.querySelectorAll<HTMLInputElement>('input[data-asked]')) remark(field, step);
    }
    at('done').textContent = filled(words.done, done, job.steps.length);
    if (isSaved) return;
    at('kept').textContent = canKeep ? words.kept : words.notKept;
}

function showClock(card: HTMLElement, step: TabletStep, kept: KeptStep, now: number): void {
    const clock = card.querySelector('.left');
    if (clock === null || step.wait === undefined) return;
    const left = kept.ends === undefined ? undefined : kept.ends - now;
    const isOver = left !== undefined && left <= 0;
    card.classList.toggle('over', isOver);
    clock.textContent =
        left === undefined
            ? filled(words.onceTicked, clockWords(step.wait))
            : isOver
              ? words.over
              : filled(words.left, clockWords(Math.ceil(left / SECOND)));
    if (!isOver || kept.rung === true) return;
    kept.rung = true;
    keep();
    ring.now();
    say(filled(words.waitOver, step.label));
}

function remark(field: HTMLInputElement, step: TabletStep): void {
    const asked = step.asked[Number(field.dataset.asked)];
    const place = field.closest('.figure')?.querySelector('.remark');
    if (asked === undefined || place === null || place === undefined) return;
    const value = typedNumber(field.value);
    const slack = 1e-9;
    let said = '';
    if (field.value.trim() !== '' && value === undefined) said = words.noNumber;
    else if (value !== undefined && value < asked.low - slack) said = filled(words.less, asked.wish);
    else if (value !== undefined && value > asked.high + slack) said = filled(words.more, asked.wish);
    if (place.textContent !== said) place.textContent = said;
    field.setAttribute('aria-invalid', String(said === words.noNumber));
}

fill();
show();
setInterval(show, SECOND);
