import { parseMoney } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** A service bought from outside, as it is typed. */
export interface Service {
  readonly description: string;
  readonly amount: string;
  readonly taxable: boolean;
}

export function servicesToSend(services: readonly Service[], currency: string) {
  return services.map(({ description, amount, taxable }) => ({
    ...{ description, taxable },
    amountMinor: parseMoney(amount, currency) ?? Number.NaN,
  }));
}

/** Work done outside, each with its price: only these are typed, the rest of a quote is computed. */
export function OutsideServices(props: { services: readonly Service[]; onChange: (services: Service[]) => void }) {
  const { services, onChange } = props;
  const { currency } = useShop();
  const change = (at: number, changes: Partial<Service>) =>
    onChange(services.map((each, place) => (place === at ? { ...each, ...changes } : each)));
  return (
    <div className="stack">
      {services.map((service, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has nothing else of its own while it is typed
        <div className="row" key={at}>
          <TextField
            name={`outsideServices/${at}/description`}
            label="Outside service"
            value={service.description}
            onChange={(description) => change(at, { description })}
            isRequired
          />
          <DecimalField
            name={`outsideServices/${at}/amountMinor`}
            label="Amount"
            unit={currency}
            decimals={2}
            value={service.amount}
            onChange={(amount) => change(at, { amount })}
            isRequired
          />
          <Checkbox isSelected={service.taxable} onChange={(taxable) => change(at, { taxable })}>
            taxed
          </Checkbox>
          <Button weight="quiet" onPress={() => onChange(services.filter((_, place) => place !== at))}>
            Leave out
          </Button>
        </div>
      ))}
      <div className="row">
        <Button onPress={() => onChange([...services, { description: '', amount: '', taxable: true }])}>
          Add an outside service
        </Button>
      </div>
    </div>
  );
}
