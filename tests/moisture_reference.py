"""A second way to the monthly balance, written on its own: the vapour pressure as an obstacle problem.

The pressure minimises the integral of its squared slope and stays at or below saturation. It is found by relaxation
with projection, node by node; the months run in many small steps instead of being split at the drying moment. Only the
figures of the climate and of the layers are shared with the tool.
"""

from math import exp

DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
NAMES = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
STILL_AIR = 2.0e-10
STEPS = 4000


def saturation(theta):
    a, b = (21.875, 265.5) if theta < 0 else (17.269, 237.3)
    return 610.5 * exp(a * theta / (b + theta))


def faces(rows, strips):
    """(s_d, resistance) steps from outside in; every layer cut into so many strips."""
    steps = []
    for _, d, lam, mu, s_d in rows:
        thick, resistance = (s_d if s_d is not None else mu * d), (d / lam if d else 0.0)
        steps += [(thick / strips, resistance / strips)] * strips
    return steps


def month_points(rows, strips, indoor, outdoor, r_si, r_se):
    """Steps of s_d and saturation at every face between them, outermost to innermost."""
    steps = faces(rows, strips)
    total = r_si + r_se + sum(r for _, r in steps)
    at, found = r_se, []
    for _, resistance in [(0, 0), *steps]:
        at += resistance
        found.append(saturation(outdoor + (indoor - outdoor) * at / total))
    return [s for s, _ in steps], found


def relax(steps, ceiling, p_out, p_in, wet):
    """Pressures at every face by projected relaxation."""
    last = len(steps)
    share = [1 / s for s in steps]
    pressure = [p_out + (p_in - p_out) * k / last for k in range(last + 1)]
    for k in wet:
        pressure[k] = ceiling[k]
    free = [k for k in range(1, last) if k not in wet]
    for _ in range(20000):
        change = 0.0
        for k in free:
            mean = (share[k - 1] * pressure[k - 1] + share[k] * pressure[k + 1]) / (share[k - 1] + share[k])
            new = min(ceiling[k], pressure[k] + 1.6 * (mean - pressure[k]))
            change = max(change, abs(new - pressure[k]))
            pressure[k] = new
        if change < 1e-10:
            break
    return pressure


def arriving(steps, ceiling, pressure, wet):
    """Rate at every wet or touching face, kg/(m2.s)."""
    found = {}
    for k in range(1, len(steps)):
        if k in wet or pressure[k] >= ceiling[k] - 1e-9:
            inward = (pressure[k + 1] - pressure[k]) / steps[k]
            outward = (pressure[k] - pressure[k - 1]) / steps[k - 1]
            if k in wet or inward - outward > 1e-5:
                found[k] = STILL_AIR * (inward - outward)
    return found


def monthly(rows, temperature, p_out, p_in, indoor, *, start, strips=1, r_si=0.13, r_se=0.04, years=1):
    """Total g/m2 at the end of each month, from the start month on, year after year."""
    stored, totals = {}, []
    for count in range(12 * years):
        m = (NAMES.index(start) + count) % 12
        steps, ceiling = month_points(rows, strips, indoor, temperature[m], r_si, r_se)
        solved = {}
        dt = DAYS[m] * 86400 / STEPS
        for _ in range(STEPS):
            wet = frozenset(stored)
            if wet not in solved:
                pressure = relax(steps, ceiling, p_out[m], p_in[m], wet)
                solved[wet] = arriving(steps, ceiling, pressure, wet)
            for k, rate in solved[wet].items():
                amount = stored.get(k, 0.0) + rate * dt
                if amount > 0:
                    stored[k] = amount
                else:
                    stored.pop(k, None)
        totals.append((NAMES[m], 1000 * sum(stored.values())))
    return totals
