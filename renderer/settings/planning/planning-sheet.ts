/** Which entry lies over the screen of what a plan goes by. */
export type PlanningSheet =
  | { readonly kind: 'place'; readonly place: string | null }
  | { readonly kind: 'place-days'; readonly place: string; readonly days: string | null }
  | { readonly kind: 'car-days'; readonly car: string; readonly days: string | null }
  | { readonly kind: 'access'; readonly car: string; readonly access: string | null }
  | { readonly kind: 'pair'; readonly car: string };

export type OpenPlanningSheet = (sheet: PlanningSheet) => void;
