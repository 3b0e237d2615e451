/** Around the sketch and its list: where keys of one character and arrows belong to the plan. */
export const PLAN_KEYS_ATTRIBUTE = 'data-plan-keys';
