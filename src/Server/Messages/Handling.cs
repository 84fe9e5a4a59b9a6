using Wolverine.Runtime;
using Wolverine.Runtime.Handlers;

namespace ColonyLineage.Server.Messages;

/// <summary>
/// Hands a message to a plain function, and its result back to who asked. Registered by hand, so that Wolverine has no code to write: its
/// compiler at run time took five seconds of the first command and 100 MB of the program.
/// </summary>
internal sealed class Handling<TMessage>(Func<TMessage, CancellationToken, Task<object?>> handle) : MessageHandler<TMessage>
{
    protected override async Task HandleAsync(TMessage message, MessageContext context, CancellationToken cancel)
    {
        if (await handle(message, cancel) is { } reply) await context.EnqueueCascadingAsync(reply);
    }
}
