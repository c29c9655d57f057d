/** The exit status of a window that has itself told the person why it cannot open the household. */
export const REFUSED_STATUS = 3;
