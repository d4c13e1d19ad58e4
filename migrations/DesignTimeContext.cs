using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Traceability.Persistence.Model;

namespace Traceability.Migrations;

/// <summary>Lets <c>dotnet ef</c> see the model; it never connects.</summary>
public sealed class DesignTimeContext : IDesignTimeDbContextFactory<WorkshopContext>
{
    public WorkshopContext CreateDbContext(string[] args) => new(WorkshopOptions.WithoutCompiledModel());
}
