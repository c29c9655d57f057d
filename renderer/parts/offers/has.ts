/** Whether one of the texts holds what is sought. */
export type Has = (...texts: readonly (string | null)[]) => boolean;
