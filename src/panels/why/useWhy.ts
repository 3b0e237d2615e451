import { createContext, useContext } from 'react';

/** Opens the reason behind a figure: its id in the answer, and what the figure is called. */
export type OpenWhy = (whyId: string, title: string) => void;

export const WhyContext = createContext<OpenWhy>(() => undefined);

export const useOpenWhy = (): OpenWhy => useContext(WhyContext);
