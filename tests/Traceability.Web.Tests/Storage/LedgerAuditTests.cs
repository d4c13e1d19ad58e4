namespace Traceability.Web.Tests.Storage;

/// <summary>What was changed behind the service's back is found by <c>verify</c>, whichever side of the ledger it was done on.</summary>
[Trait("Category", "Storage")]
public sealed class LedgerAuditTests(Workshop workshop) : IClassFixture<Workshop>
{
    /// <summary>
    /// Name of the tampering, what is done, and what is said of it. {0} is the part's id, {1} its reading, {2} another part's id.
    /// </summary>
    public static TheoryData<string, string, string> Tamperings =>
        new()
        {
            {
                "a changed value",
                "update readings set value = 851, digits = '851' where id = '{1}'",
                "row {1} of readings was changed: it says other than entry 2"
            },
            { "a changed limit", "update readings set upper = 5000 where id = '{1}'", "row {1} of readings was changed" },
            { "a reading said to be met", "update readings set met = not met where id = '{1}'", "row {1} of readings was changed" },
            { "another person's reading", "update readings set by = '{2}' where id = '{1}'", "row {1} of readings was changed" },
            {
                "a reading moved in time",
                "update readings set occurred_at = occurred_at - interval '1 day' where id = '{1}'",
                "row {1} of readings was changed"
            },
            { "a word that no state has", "update readings set source = 'Guessed' where id = '{1}'", "row {1} of readings was changed" },
            { "a deleted reading", "delete from readings where id = '{1}'", "readings has no row {1}, which entry 2 names" },
            { "a deleted ending", "delete from attempt_endings where part_id = '{0}'", "attempt_endings has no row" },
            {
                "a verdict turned",
                "update attempt_endings set verdict = 'Fail', failed_by_finding = true where part_id = '{0}'",
                "of attempt_endings was changed"
            },
            {
                "an inserted reading",
                "insert into readings select (jsonb_populate_record(r, jsonb_build_object('id', gen_random_uuid()))).* from readings r"
                    + " where id = '{1}'",
                "of readings is named by no entry of the ledger"
            },
            {
                "an inserted correction",
                "insert into corrections (id, part_id, reading_id, value, digits, met, reason, by, occurred_at, recorded_at) select"
                    + " gen_random_uuid(), part_id, id, 851, '851', true, 'made up', by, now(), now() from readings where id = '{1}'",
                "of corrections is named by no entry of the ledger"
            },
            {
                "an inserted hold",
                "insert into holds (id, part_id, reason, by, occurred_at, recorded_at) select gen_random_uuid(), '{0}', 'made up', by,"
                    + " now(), now() from readings where id = '{1}'",
                "of holds is named by no entry of the ledger"
            },
            {
                "an inserted role",
                "insert into role_grants (id, person_id, role, given, by, occurred_at, recorded_at) select gen_random_uuid(), id,"
                    + " 'Quality', true, by, now(), now() from people where badge = 'B1'",
                "of role_grants is named by no entry of the ledger"
            },
            { "a role changed", "update role_grants set role = 'Quality' where role = 'Service'", "of role_grants was changed" },
            {
                "a changed PIN",
                "update pin_settings set hash = hash || 'x' where person_id = (select id from people where badge = 'B1')",
                "of pin_settings was changed"
            },
            {
                "a PIN put beside the old one",
                "insert into pin_settings (id, person_id, hash, by, occurred_at, recorded_at) select gen_random_uuid(), person_id,"
                    + " hash, by, now(), now() from pin_settings limit 1",
                "of pin_settings is named by no entry of the ledger"
            },
            { "a name changed", "update people set name = 'Somebody Else' where badge = 'B1'", "of people was changed" },
            {
                "a route's limit changed",
                "update route_revisions set text = replace(text, 'upper', 'upper ') where kind = 'diaphragm'",
                "of route_revisions was changed"
            },
            { "a lot's supplier changed", "update lots set supplier = 'Another' where number = 'FILM-1'", "of lots was changed" },
            { "a calibration made longer", "update calibrations set due_on = due_on + 1000", "of calibrations was changed" },
            {
                "a changed body",
                "update ledger_entries set body = replace(body, '850', '851') where subject_id = '{0}' and sequence = 2",
                "the body of entry 2 was changed: its hash is another"
            },
            {
                "a body that is no JSON",
                "update ledger_entries set body = left(body, 20) where subject_id = '{0}' and sequence = 2",
                "the body of entry 2 is no longer JSON"
            },
            {
                "facts that are none",
                "update ledger_entries set body = '[1]' where subject_id = '{0}' and sequence = 1; update ledger_entries set body ="
                    + " jsonb_build_object('facts', jsonb_build_array(1, jsonb_build_object('fact', 2)))::text where subject_id = '{0}'"
                    + " and sequence = 2",
                "the body of entry 2 was changed: its hash is another"
            },
            {
                "a made-up hash on which the head agrees",
                "update ledger_entries set hash = repeat('a', 64) where subject_id = '{0}' and sequence = 2; update ledger_heads set"
                    + " hash = repeat('a', 64) where subject_id = '{0}'",
                "the body of entry 2 was changed: its hash is another"
            },
            {
                "a link to another entry",
                "update ledger_entries set previous_hash = repeat('b', 64) where subject_id = '{0}' and sequence = 2",
                "entry 2 does not follow the entry before it"
            },
            {
                "a hash that is none",
                "update ledger_entries set previous_hash = 'none' where subject_id = '{0}' and sequence = 2",
                "entry 2 does not follow the entry before it"
            },
            {
                "an entry moved in time",
                "update ledger_entries set recorded_at = recorded_at - interval '1 year' where subject_id = '{0}' and sequence = 2",
                "entry 2 says another subject, command or time beside its body than in it"
            },
            { "a removed first entry", "delete from ledger_entries where subject_id = '{0}' and sequence = 1", "entry 1 is missing" },
            {
                "a removed last entry",
                "delete from ledger_entries where subject_id = '{0}' and sequence = 2",
                "the chain should end at entry 2 with the hash of its head, but it ends at entry 1"
            },
            {
                "entries in another order",
                "update ledger_entries set sequence = 3 - sequence + 10 where subject_id = '{0}'; update ledger_entries set sequence ="
                    + " sequence - 10 where subject_id = '{0}'",
                "entry 1 does not follow the entry before it"
            },
            {
                "an inserted entry",
                "insert into ledger_entries select gen_random_uuid(), subject_id, 3, kind, body, hash, hash, recorded_at from"
                    + " ledger_entries where subject_id = '{0}' and sequence = 2",
                "the body of entry 3 was changed: its hash is another"
            },
            {
                "a removed chain",
                "delete from ledger_entries where subject_id = '{0}'; delete from ledger_heads where subject_id = '{0}'",
                "the chain has no head"
            },
            { "a removed head", "delete from ledger_heads where subject_id = '{0}'", "the chain has no head" },
            {
                "the rows of a part without its chain",
                "delete from readings where part_id = '{0}'; delete from attempt_endings where part_id = '{0}'; delete from attempts"
                    + " where part_id = '{0}'; delete from parts where id = '{0}'",
                "parts has no row {0}"
            },
        };

    [Theory]
    [MemberData(nameof(Tamperings))]
    public async Task Tampering_is_found_and_what_comes_after_it_is_looked_at_too(string what, string sql, string said)
    {
        var serial = await workshop.MountAsync();
        var other = await workshop.MountAsync();
        var id = await AskAsync<Guid>($"select id from parts where serial = '{serial}'");
        var otherId = await AskAsync<Guid>($"select id from parts where serial = '{other}'");
        var reading = await AskAsync<Guid>($"select id from readings where part_id = '{id}'");
        await using var health = new HealthCheck(workshop);
        var before = await health.LedgerAsync();

        await TamperAsync(Filled(sql));
        await TamperAsync($"update readings set digits = digits || '0' where part_id = '{otherId}'");

        var found = (await health.LedgerAsync()).Except(before).ToList();
        Assert.True(found.Exists(f => f.Problem.Contains(Filled(said), StringComparison.Ordinal)), $"{what}: {string.Join("; ", found)}");
        Assert.Contains(found, f => f.SubjectId == otherId && f.Problem.EndsWith("says other than entry 2", StringComparison.Ordinal));

        string Filled(string text) =>
            text.Replace("{0}", $"{id}", StringComparison.Ordinal)
                .Replace("{1}", $"{reading}", StringComparison.Ordinal)
                .Replace("{2}", $"{otherId}", StringComparison.Ordinal);
    }

    private async Task<T> AskAsync<T>(string sql)
    {
        await using var door = BackDoor.Of(workshop);
        return await door.AskAsync<T>(sql);
    }

    private async Task TamperAsync(string sql)
    {
        await using var door = BackDoor.Of(workshop);
        await door.TamperAsync(sql);
    }
}
