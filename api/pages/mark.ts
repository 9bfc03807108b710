/** The mark of the product: a ring, and the tap that makes it sound. @module */

const RING = `<circle cx="45" cy="58" r="31" fill="none" stroke="STROKE" stroke-width="13"/><path d="M70 17l5-10M84 30l11-6" fill="none" stroke="STROKE" stroke-width="6" stroke-linecap="round"/>`;

/** For the header; takes the colour of the words around it. */
export const MARK = `<svg viewBox="0 0 100 100" aria-hidden="true">${RING.replaceAll("STROKE", "currentColor")}</svg>`;

/** For the browser's tab: seen on light and dark alike. */
export const FAVICON = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">${RING.replaceAll("STROKE", "#9A3B14")}</svg>`;
