import type { ReviewHead } from '../head';
import { type HeadWords, headWords } from '../head-words';
import { oneLine } from '../one-line';
import type { Review } from '../review';
import { Spoken } from './spoken';

/** What a page of several reviews begins with, and its index. */
export function Head({ head, reviews }: { head: ReviewHead; reviews: readonly Review[] }) {
    const { summary, digest, stock, rows, together }: HeadWords = headWords(head, reviews);
    return (
        <nav class="index" aria-label="Recipes">
            <p>
                <strong>{summary}</strong>
            </p>
            {digest.length > 0 && (
                <ul class="digest">
                    {digest.flatMap(({ mark, told }) =>
                        told.map(({ name, review, text }, index) => (
                            <li key={`${mark} ${name} ${index}`}>
                                <strong class={mark}>{mark}</strong>{' '}
                                {review === undefined ? oneLine(name) : <a href={`#${articleId(review)}`}>{oneLine(name)}</a>}:{' '}
                                <Spoken text={text} />
                            </li>
                        )),
                    )}
                </ul>
            )}
            {stock.length > 0 && (
                <ul>
                    {stock.map((line) => (
                        <li key={line}>
                            stock: <Spoken text={line} />
                        </li>
                    ))}
                </ul>
            )}
            <ul>
                {rows.map(({ review, name, mark, text }) => (
                    <li key={String(review)}>
                        <strong class={mark}>{mark}</strong> <a href={`#${articleId(review)}`}>{oneLine(name)}</a>:{' '}
                        <Spoken text={text} />
                    </li>
                ))}
            </ul>
            {together.map((line) => (
                <p key={line}>{oneLine(line)}</p>
            ))}
        </nav>
    );
}

/** @param index of the review among all */
export function articleId(index: number): string {
    return `review-${index + 1}`;
}
