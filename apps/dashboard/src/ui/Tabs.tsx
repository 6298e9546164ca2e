import type { ReactNode } from 'react';
import { Tabs as AriaTabs, Tab, TabList, TabPanel } from 'react-aria-components';

export interface TabSheet {
  readonly id: string;
  readonly title: string;
  readonly content: ReactNode;
}

/** Sheets lying on each other, one in sight. Keep the chosen one in the address (`useAddress`) when it matters tomorrow. */
export function Tabs(props: {
  label: string;
  sheets: readonly TabSheet[];
  selected?: string;
  onSelect?: (id: string) => void;
}) {
  return (
    <AriaTabs
      className="tabs"
      {...(props.selected === undefined ? {} : { selectedKey: props.selected })}
      onSelectionChange={(key) => props.onSelect?.(String(key))}
    >
      <TabList aria-label={props.label} className="tab-list">
        {props.sheets.map((sheet) => (
          <Tab key={sheet.id} id={sheet.id} className="tab">
            {sheet.title}
          </Tab>
        ))}
      </TabList>
      {props.sheets.map((sheet) => (
        <TabPanel key={sheet.id} id={sheet.id} className="tab-panel">
          {sheet.content}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
