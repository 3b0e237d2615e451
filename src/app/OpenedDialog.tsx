import { lazy } from 'react';
import type { TopbarDialog } from '../panels/topbar/Topbar.tsx';
import type { Keeping } from './keeping.ts';

const WhyDialog = lazy(() => import('../panels/why/WhyDialog.tsx'));
const NewPlanDialog = lazy(() => import('../panels/newplan/NewPlanDialog.tsx'));
const PlansDialog = lazy(() => import('../panels/plans/PlansDialog.tsx'));
const SettingsDialog = lazy(() => import('../panels/topbar/SettingsDialog.tsx'));
const LegendDialog = lazy(() => import('../panels/topbar/LegendDialog.tsx'));
const ViewDialog = lazy(() => import('../panels/faces/ViewDialog.tsx'));

export type Opened = { kind: TopbarDialog } | { kind: 'why'; whyId: string; title: string };

/** The dialog that is open; each is fetched when it is first opened. */
export default function OpenedDialog({
  opened,
  files,
  onClose,
}: {
  opened: Opened;
  files: Keeping;
  onClose: () => void;
}) {
  switch (opened.kind) {
    case 'why':
      return <WhyDialog whyId={opened.whyId} title={opened.title} onClose={onClose} />;
    case 'newPlan':
      return <NewPlanDialog templates={files.templates} onClose={onClose} />;
    case 'open':
      return <PlansDialog files={files} onClose={onClose} />;
    case 'settings':
      return <SettingsDialog onClose={onClose} />;
    case 'legend':
      return <LegendDialog onClose={onClose} />;
    case 'view':
      return <ViewDialog onClose={onClose} />;
  }
}
